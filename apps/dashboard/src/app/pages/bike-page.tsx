import { Title } from '@mantine/core';
import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { texts as decisionTexts } from '../../features/decisions/texts.js';
import { CompareRevisions } from '../../features/setups/components/compare-revisions.js';
import { OpenDecision } from '../../features/setups/components/open-decision.js';
import { SetupHistory } from '../../features/setups/components/setup-history.js';
import { SetupNow } from '../../features/setups/components/setup-now.js';
import { texts } from '../../features/setups/texts.js';
import { UnitFacts } from '../../features/spring-units/components/unit-facts.js';
import { plansQuery } from '../../features/test-plans/api/plans.js';
import { BikePlans } from '../../features/test-plans/components/bike-plans.js';
import { texts as planTexts } from '../../features/test-plans/texts.js';
import { bikeWorkQuery } from '../../features/work-orders/api/work-orders.js';
import { BikeWork } from '../../features/work-orders/components/bike-work.js';
import { texts as workTexts } from '../../features/work-orders/texts.js';
import { texts as benchTexts } from '../../features/workbench/texts.js';
import { texts as dropTexts } from '../../features/workshop/drop-texts.js';
import { joined } from '../../shared/http/joined.js';
import { decisionHistoryQuery } from '../../shared/http/reads/decisions.js';
import { useFleet } from '../../shared/http/reads/fleet.js';
import { setupHistoryQuery } from '../../shared/http/reads/setups.js';
import { Empty } from '../../shared/ui/empty.js';
import { LinkButton } from '../../shared/ui/link.js';
import { Page, Section } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';
import classes from './bike-page.module.css';
import { NotFoundPage } from './not-found-page.js';

const route = getRouteApi('/teams/$teamId/bikes/$bikeId');

export function BikePage() {
  const { teamId, bikeId } = route.useParams();
  const fleet = useFleet(teamId);
  const canPlan = useMembership().membership.role !== 'rider';
  return (
    <QueryView query={fleet}>
      {({ bikes, riderName, units }) => {
        const bike = bikes.find(({ id }) => id === bikeId);
        if (bike === undefined) return <NotFoundPage />;
        const inBike = units.filter(({ id }) => id === bike.forkUnitId || id === bike.shockUnitId);
        return (
          <Page
            title={bike.name}
            lead={`${riderName(bike.riderId)} · ${bike.category}`}
            actions={
              <>
                <LinkButton
                  variant="default"
                  to="/teams/$teamId/drop-test"
                  params={{ teamId }}
                  search={{ bikeId }}
                >
                  {dropTexts.link}
                </LinkButton>
                {canPlan && (
                  <LinkButton
                    variant="default"
                    to="/teams/$teamId/test-plans/new"
                    params={{ teamId }}
                    search={{ bikeId }}
                  >
                    {planTexts.plan}
                  </LinkButton>
                )}
              </>
            }
          >
            <BikeRecords teamId={teamId} bikeId={bikeId}>
              <Section title={texts.units}>
                <div className={classes.units}>
                  {inBike.map((unit) => (
                    <section key={unit.id}>
                      <Title order={3}>{unit.name}</Title>
                      <UnitFacts unit={unit} />
                    </section>
                  ))}
                </div>
              </Section>
            </BikeRecords>
          </Page>
        );
      }}
    </QueryView>
  );
}

interface BikeRecordsProps {
  readonly teamId: string;
  readonly bikeId: string;
  /** What stands below them, once they are there: it would be pushed away. */
  readonly children: ReactNode;
}

/** Plans under way, the set-up now, the open decision, and the history of both. */
function BikeRecords({ teamId, bikeId, children }: BikeRecordsProps) {
  const { role } = useMembership().membership;
  const canDecide = role !== 'coach';
  const work = useQuery({ ...bikeWorkQuery(teamId, bikeId), enabled: role !== 'rider' });
  const setups = useQuery(setupHistoryQuery(teamId, bikeId));
  const decisions = useQuery(decisionHistoryQuery(teamId, bikeId));
  const plans = useInfiniteQuery(plansQuery(teamId, { state: 'open' }));
  // Plans that cannot be read keep nobody from the set-up.
  const readPlans = { data: plans.isPending ? undefined : plans, error: null, refetch: plans.refetch };
  const readWork = role === 'rider' ? [] : [work];
  const records = joined([setups, decisions, readPlans, ...readWork], () => ({
    setups: setups.data ?? [],
    decisions: decisions.data ?? [],
  }));
  const change = canDecide && (
    <LinkButton to="/teams/$teamId/bikes/$bikeId/new-set-up" params={{ teamId, bikeId }}>
      {texts.change}
    </LinkButton>
  );
  return (
    <QueryView query={records}>
      {(data) => {
        const [now] = data.setups;
        const [last] = data.decisions;
        return (
          <>
            <BikePlans teamId={teamId} bikeId={bikeId} plans={plans.data ?? []} />
            {now === undefined ? (
              <Empty title={texts.notSetUp} action={change}>
                {texts.notSetUpLead}
              </Empty>
            ) : (
              <Section
                title={texts.now}
                actions={
                  <>
                    <LinkButton
                      variant="default"
                      to="/teams/$teamId/bikes/$bikeId/workbench"
                      params={{ teamId, bikeId }}
                    >
                      {benchTexts.toBench}
                    </LinkButton>
                    {change}
                  </>
                }
              >
                <SetupNow setup={now} />
              </Section>
            )}
            {last?.outcome === null && (
              <Section title={texts.decide}>
                <OpenDecision teamId={teamId} decision={last} canDecide={canDecide} />
              </Section>
            )}
            {now !== undefined && role !== 'rider' && (
              <Section title={workTexts.section}>
                <BikeWork
                  teamId={teamId}
                  orders={work.data ?? []}
                  setupId={now.id}
                  canMake={role === 'mechanic'}
                  isReading={setups.isFetching}
                />
              </Section>
            )}
            {data.setups.length > 1 && (
              <Section title={texts.compare}>
                <CompareRevisions setups={data.setups} />
              </Section>
            )}
            {now !== undefined && (
              <Section
                title={texts.history}
                actions={
                  <LinkButton
                    variant="default"
                    to="/teams/$teamId/decisions"
                    params={{ teamId }}
                    search={{ bikeId }}
                  >
                    {decisionTexts.link}
                  </LinkButton>
                }
              >
                <SetupHistory teamId={teamId} canGoBack={canDecide} {...data} />
              </Section>
            )}
            {children}
          </>
        );
      }}
    </QueryView>
  );
}
