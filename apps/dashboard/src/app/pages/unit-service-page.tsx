import { Text } from '@mantine/core';
import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { serviceEntriesQuery, unitServiceQuery } from '../../features/unit-service/api/unit-service.js';
import { CareForm } from '../../features/unit-service/components/care-form.js';
import { EntryForm } from '../../features/unit-service/components/entry-form.js';
import { EntryList } from '../../features/unit-service/components/entry-list.js';
import { Standing } from '../../features/unit-service/components/standing.js';
import { texts } from '../../features/unit-service/texts.js';
import { joined } from '../../shared/http/joined.js';
import { springUnitsQuery } from '../../shared/http/reads/spring-units.js';
import { More } from '../../shared/ui/more.js';
import { Page, Section } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';
import { NotFoundPage } from './not-found-page.js';

const route = getRouteApi('/teams/$teamId/spring-units/$unitId/service');

/** Service of one fork or shock: how it stands, what to record, and what was. */
export function UnitServicePage() {
  const { teamId, unitId } = route.useParams();
  const { account, membership } = useMembership();
  const units = useQuery(springUnitsQuery(teamId));
  const service = useQuery(unitServiceQuery(teamId, unitId));
  const unit = units.data?.find(({ id }) => id === unitId);
  if (units.data !== undefined && unit === undefined) return <NotFoundPage />;
  const canChange = membership.role === 'mechanic';
  return (
    <QueryView query={joined([units, service], () => service.data)}>
      {(read) =>
        read !== undefined && (
          <Page title={texts.title(unit?.name ?? '')} lead={texts.lead}>
            <Section title={texts.now}>
              <Standing standing={read.standing} />
            </Section>
            {canChange && (
              <>
                <Section title={texts.record}>
                  <EntryForm teamId={teamId} unitId={unitId} doneBy={account.displayName} />
                </Section>
                <Section title={texts.manual}>
                  <CareForm teamId={teamId} service={read} />
                </Section>
              </>
            )}
            <Section title={texts.history}>
              <Entries teamId={teamId} unitId={unitId} canChange={canChange} />
            </Section>
          </Page>
        )
      }
    </QueryView>
  );
}

interface EntriesProps {
  readonly teamId: string;
  readonly unitId: string;
  readonly canChange: boolean;
}

function Entries({ teamId, unitId, canChange }: EntriesProps) {
  const entries = useInfiniteQuery(serviceEntriesQuery(teamId, unitId));
  return (
    <QueryView
      query={entries}
      isEmpty={(items) => items.length === 0}
      empty={<Text>{texts.historyNone}</Text>}
    >
      {(items) => (
        <>
          <EntryList teamId={teamId} entries={items} canChange={canChange} />
          <More query={entries} label={texts.older} />
        </>
      )}
    </QueryView>
  );
}
