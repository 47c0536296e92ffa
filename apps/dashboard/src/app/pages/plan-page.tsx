import { NativeSelect, Text } from '@mantine/core';
import { useQueries, useQuery } from '@tanstack/react-query';
import { getRouteApi, useNavigate } from '@tanstack/react-router';
import {
  planQuery,
  progressQuery,
  type Plan,
  type PlanProgress,
} from '../../features/test-plans/api/plans.js';
import { ClosePlan } from '../../features/test-plans/components/close-plan.js';
import { PlanArms } from '../../features/test-plans/components/plan-arms.js';
import { PlanOrder } from '../../features/test-plans/components/plan-order.js';
import { Statement } from '../../features/test-plans/components/statement.js';
import { riderToRide } from '../../features/test-plans/model/order.js';
import { statementWords } from '../../features/test-plans/model/statement-words.js';
import { texts } from '../../features/test-plans/texts.js';
import { formatDay } from '../../shared/format/time.js';
import { joined } from '../../shared/http/joined.js';
import { bikesQuery } from '../../shared/http/reads/bikes.js';
import { ridersQuery } from '../../shared/http/reads/riders.js';
import { setupHistoryQuery } from '../../shared/http/reads/setups.js';
import { tracksQuery, type Track } from '../../shared/http/reads/tracks.js';
import { Below, isAsked } from '../../shared/ui/below.js';
import { LinkButton } from '../../shared/ui/link.js';
import { Page, Section } from '../../shared/ui/page.js';
import { QueryView } from '../../shared/ui/query-view.js';
import { useMembership } from '../use-membership.js';
import { RideNext, useLastGround, type RiddenFleet } from './plan-page-next.js';
import { WaitingRuns } from './waiting-runs.js';

const route = getRouteApi('/teams/$teamId/test-plans/$planId');

export function PlanPage() {
  const { teamId, planId } = route.useParams();
  const plan = useQuery(planQuery(teamId, planId));
  const progress = useQuery(progressQuery(teamId, planId));
  const tracks = useQuery(tracksQuery(teamId));
  const bikes = useQuery(bikesQuery(teamId));
  // Names that only who sees several riders needs: a phone without signal may not have them.
  const riders = useQuery(ridersQuery(teamId)).data ?? [];
  const everything = joined([plan, progress, tracks, bikes], () => ({
    plan: plan.data,
    isReading: plan.isFetching,
    progress: progress.data ?? [],
    track: tracks.data?.find(({ id }) => id === plan.data?.trackId),
    fleet: {
      bikes: bikes.data ?? [],
      riderName: (id: string) => riders.find((rider) => rider.id === id)?.name ?? '',
    },
  }));
  return (
    <QueryView query={everything} page={texts.title}>
      {({ plan: made, ...rest }) => made !== undefined && <OnePlan plan={made} {...rest} />}
    </QueryView>
  );
}

interface OnePlanProps {
  readonly plan: Plan;
  readonly isReading: boolean;
  readonly progress: readonly PlanProgress[];
  readonly track: Track | undefined;
  readonly fleet: RiddenFleet;
}

function OnePlan({ plan, isReading, progress, track, fleet }: OnePlanProps) {
  const { teamId, role } = useMembership().membership;
  const place = riderToRide(progress, route.useSearch().riderId);
  const { setups, areAsked } = useSetups(teamId, plan);
  const ground = useLastGround(teamId, plan, plan.closedAt === null ? place?.riderId : undefined);
  const bikeName = (id: string) => fleet.bikes.find((bike) => bike.id === id)?.name ?? '';
  const isBlinded = plan.blind && role === 'rider';
  const canLook = plan.closedAt !== null || (plan.looks === 'after every block' && !isBlinded);
  const facts = [
    track?.name ?? '',
    plan.day === null ? '' : formatDay(plan.day),
    plan.blind ? texts.blind : '',
  ];
  return (
    <Page
      title={plan.name}
      lead={facts.filter((fact) => fact !== '').join(' · ')}
      actions={
        canLook && (
          <LinkButton
            variant={plan.closedAt === null ? 'default' : 'filled'}
            to="/teams/$teamId/test-plans/$planId/comparison"
            params={{ teamId, planId: plan.id }}
          >
            {plan.closedAt === null ? texts.comparisonSoFar : texts.comparison}
          </LinkButton>
        )
      }
    >
      {plan.closedAt !== null && (
        <Text fw={600}>{texts.closedAt(formatDay(plan.closedAt), plan.closingNote ?? '')}</Text>
      )}
      {progress.length > 1 && <ChooseRider plan={plan} fleet={fleet} riderId={place?.riderId ?? ''} />}
      <WaitingRuns teamId={teamId} from={`/teams/${teamId}/test-plans/${plan.id}`} />
      {place !== undefined && plan.closedAt === null && (
        <Below isReady={areAsked}>
          <RideNext
            key={place.riderId}
            plan={plan}
            place={place}
            track={track}
            fleet={fleet}
            setups={setups}
            ground={ground}
          />
        </Below>
      )}
      <Below isReady={areAsked && ground.isAsked}>
        {place !== undefined && (
          <Section title={texts.wholeOrder}>
            <PlanOrder teamId={teamId} plan={plan} riderId={place.riderId} />
          </Section>
        )}
        {plan.closedAt === null && role !== 'rider' && (
          <Section title={texts.closeTitle}>
            <ClosePlan teamId={teamId} plan={plan} isReading={isReading} />
          </Section>
        )}
        <Section title={texts.armsTitle}>
          <PlanArms plan={plan} bikeName={bikeName} setups={setups} />
        </Section>
        <Section title={texts.saidBefore}>
          <Statement
            words={statementWords({ ...plan, riders: plan.riders.length })}
            reckoned={plan.statement.sentences}
          />
        </Section>
      </Below>
    </Page>
  );
}

/** The set-ups of the plan's bikes, as far as they are read and may be seen; asked once there is an answer or no signal. */
function useSetups(teamId: string, plan: Plan) {
  const bikes = [...new Set(plan.arms.flatMap((arm) => arm.setups.map(({ bikeId }) => bikeId)))];
  const histories = useQueries({ queries: bikes.map((bikeId) => setupHistoryQuery(teamId, bikeId)) });
  return {
    setups: histories.flatMap(({ data }) => data ?? []),
    areAsked: histories.every(isAsked),
  };
}

function ChooseRider({ plan, fleet, riderId }: { plan: Plan; fleet: RiddenFleet; riderId: string }) {
  const navigate = useNavigate({ from: '/teams/$teamId/test-plans/$planId' });
  return (
    <NativeSelect
      maw="32rem"
      label={texts.rider}
      value={riderId}
      onChange={(event) => void navigate({ search: { riderId: event.currentTarget.value }, replace: true })}
      data={plan.riders.map((rider) => ({
        value: rider.riderId,
        label: `${fleet.riderName(rider.riderId)}: ${texts.runsOf(rider.ridden, rider.ridden + rider.left)}`,
      }))}
    />
  );
}
