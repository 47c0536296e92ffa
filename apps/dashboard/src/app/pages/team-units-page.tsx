import { useQuery } from '@tanstack/react-query';
import { UnitList } from '../../features/spring-units/components/unit-list.js';
import { texts } from '../../features/spring-units/texts.js';
import { springUnitsQuery } from '../../shared/http/reads/spring-units.js';
import { Empty } from '../../shared/ui/empty.js';
import { LinkButton } from '../../shared/ui/link.js';
import { Page } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';

export function TeamUnitsPage() {
  const { teamId, role } = useMembership().membership;
  const query = useQuery(springUnitsQuery(teamId));
  const canChange = role === 'mechanic';
  const add = canChange && (
    <LinkButton to="/teams/$teamId/team/spring-units/$unitId" params={{ teamId, unitId: 'new' }}>
      {texts.add}
    </LinkButton>
  );
  return (
    <Page title={texts.title} actions={add}>
      <QueryView
        query={query}
        isEmpty={(items) => items.length === 0}
        empty={
          <Empty title={texts.none} action={add}>
            {texts.noneLead}
          </Empty>
        }
      >
        {(items) => <UnitList teamId={teamId} units={items} canChange={canChange} />}
      </QueryView>
    </Page>
  );
}
