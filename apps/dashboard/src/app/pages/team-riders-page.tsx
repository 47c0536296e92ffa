import { useQuery } from '@tanstack/react-query';
import { RiderList } from '../../features/riders/components/rider-list.js';
import { texts } from '../../features/riders/texts.js';
import { ridersQuery } from '../../shared/http/reads/riders.js';
import { Empty } from '../../shared/ui/empty.js';
import { LinkButton } from '../../shared/ui/link.js';
import { Page } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';

export function TeamRidersPage() {
  const { teamId, role } = useMembership().membership;
  const query = useQuery(ridersQuery(teamId));
  const canChange = role === 'mechanic';
  const add = canChange && (
    <LinkButton to="/teams/$teamId/team/riders/$riderId" params={{ teamId, riderId: 'new' }}>
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
        {(items) => <RiderList teamId={teamId} riders={items} canChange={canChange} />}
      </QueryView>
    </Page>
  );
}
