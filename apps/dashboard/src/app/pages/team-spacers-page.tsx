import { Text } from '@mantine/core';
import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { movementsQuery, spacersQuery } from '../../features/spacers/api/spacers.js';
import { MovementForm } from '../../features/spacers/components/movement-form.js';
import { MovementList } from '../../features/spacers/components/movement-list.js';
import { StockTable } from '../../features/spacers/components/stock-table.js';
import { texts } from '../../features/spacers/texts.js';
import { joined } from '../../shared/http/joined.js';
import { springUnitsQuery } from '../../shared/http/reads/spring-units.js';
import { Empty } from '../../shared/ui/empty.js';
import { More } from '../../shared/ui/more.js';
import { Page, Section } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';
import { ToFirstSteps } from './to-first-steps.js';

/** Spacers in stock: what lies there, what to record, and how it came to be. */
export function TeamSpacersPage() {
  const { teamId, role } = useMembership().membership;
  const stocks = useQuery(spacersQuery(teamId));
  const units = useQuery(springUnitsQuery(teamId));
  const unitName = (id: string) => units.data?.find((unit) => unit.id === id)?.name ?? '';
  const canChange = role === 'mechanic';
  return (
    <Page title={texts.title} lead={texts.lead}>
      <QueryView
        query={joined([stocks, units], () => stocks.data ?? [])}
        isEmpty={(items) => items.length === 0}
        empty={
          <Empty title={texts.none} action={<ToFirstSteps />}>
            {texts.noneLead}
          </Empty>
        }
      >
        {(items) => (
          <>
            <StockTable stocks={items} unitName={unitName} />
            {canChange && (
              <Section title={texts.record}>
                <MovementForm teamId={teamId} stocks={items} />
              </Section>
            )}
            <Section title={texts.history}>
              <Movements teamId={teamId} canChange={canChange} />
            </Section>
          </>
        )}
      </QueryView>
    </Page>
  );
}

function Movements({ teamId, canChange }: { teamId: string; canChange: boolean }) {
  const movements = useInfiniteQuery(movementsQuery(teamId));
  return (
    <QueryView
      query={movements}
      isEmpty={(items) => items.length === 0}
      empty={<Text>{texts.historyNone}</Text>}
    >
      {(items) => (
        <>
          <MovementList teamId={teamId} movements={items} canChange={canChange} />
          <More query={movements} label={texts.older} />
        </>
      )}
    </QueryView>
  );
}
