import { Text } from '@mantine/core';
import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { PlanRunForm } from '../../features/ride/components/plan-run-form.js';
import type { Plan, PlanProgress } from '../../features/test-plans/api/plans.js';
import { useLogPlanRun } from '../../features/test-plans/api/ride-plan.js';
import { NextRun } from '../../features/test-plans/components/next-run.js';
import { OrderRest } from '../../features/test-plans/components/order-rest.js';
import { texts } from '../../features/test-plans/texts.js';
import type { Fleet } from '../../shared/http/reads/fleet.js';
import { runsQuery } from '../../shared/http/reads/runs.js';
import { tracksQuery } from '../../shared/http/reads/tracks.js';
import type { Setup } from '../../shared/http/reads/setups.js';
import { Section } from '../../shared/ui/page.js';
import { useMembership } from '../use-membership.js';

interface RideNextProps {
  readonly plan: Plan;
  readonly place: PlanProgress;
  readonly fleet: Fleet;
  readonly setups: readonly Setup[];
}

/** The next run of one rider, and where it is logged. */
export function RideNext({ plan, place, fleet, setups }: RideNextProps) {
  const { teamId, role } = useMembership().membership;
  const { riderId, next } = place;
  const log = useLogPlanRun(teamId, plan.id);
  const bikeId = plan.riders.find((rider) => rider.riderId === riderId)?.bikeId ?? '';
  const bike = fleet.bikes.find(({ id }) => id === bikeId);
  const track = useQuery(tracksQuery(teamId)).data?.find(({ id }) => id === plan.trackId);
  const last = useInfiniteQuery(runsQuery(teamId, { trackId: plan.trackId, bikeId })).data?.[0];
  if (place.restIsStale) {
    return (
      <Section title={texts.orderRest}>
        <OrderRest teamId={teamId} planId={plan.id} riderId={riderId} />
      </Section>
    );
  }
  if (next === null) {
    return (
      <Section title={texts.allRidden}>
        <Text>{role === 'rider' ? texts.waitForClosing : texts.allRiddenLead}</Text>
      </Section>
    );
  }
  return (
    <Section title={texts.next(next.position, place.ridden + place.left)}>
      <NextRun plan={plan} next={next} bikeId={bikeId} setups={setups}>
        <PlanRunForm
          // Every run begins with empty fields, on the ground of the last one.
          key={`${riderId} ${next.position} ${last?.id ?? ''}`}
          track={plan.trackId}
          sections={track?.sections ?? []}
          hasShock={bike?.shockUnitId !== null}
          condition={last?.condition ?? 'dry'}
          save={texts.saveRun(next.position, next.letter)}
          sending={{ ...log, mutate: (run, then) => log.mutate({ ...run, riderId }, then) }}
        />
      </NextRun>
    </Section>
  );
}
