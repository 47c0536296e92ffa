import { Text } from '@mantine/core';
import { useInfiniteQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { PlanRunForm } from '../../features/ride/components/plan-run-form.js';
import type { Plan, PlanProgress } from '../../features/test-plans/api/plans.js';
import { NextRun } from '../../features/test-plans/components/next-run.js';
import { OrderRest } from '../../features/test-plans/components/order-rest.js';
import { nextAfter, setupOfArm } from '../../features/test-plans/model/order.js';
import { texts } from '../../features/test-plans/texts.js';
import { localDay } from '../../shared/format/time.js';
import type { Fleet } from '../../shared/http/reads/fleet.js';
import { runsQuery, type Run } from '../../shared/http/reads/runs.js';
import type { Track } from '../../shared/http/reads/tracks.js';
import type { Setup } from '../../shared/http/reads/setups.js';
import { isAsked } from '../../shared/ui/below.js';
import { Section } from '../../shared/ui/page.js';
import { useMembership } from '../use-membership.js';
import { useTakenPlaces } from '../use-taken-places.js';

/** What a plan says of bikes and riders. */
export type RiddenFleet = Pick<Fleet, 'bikes' | 'riderName'>;

interface RideNextProps {
  readonly plan: Plan;
  readonly place: PlanProgress;
  /** Undefined where it is not among the tracks that were read. */
  readonly track: Track | undefined;
  readonly fleet: RiddenFleet;
  readonly setups: readonly Setup[];
  readonly ground: LastGround;
}

interface LastGround {
  /** The form begins once it is known, or there is no signal to ask: it must not begin anew while somebody types. */
  readonly isAsked: boolean;
  readonly last: Run['condition'];
}

/** The ground of the newest run of a rider's bike on the plan's track; dry before the first. */
export function useLastGround(teamId: string, plan: Plan, riderId: string | undefined): LastGround {
  const bikeId = bikeOf(plan, riderId);
  const runs = useInfiniteQuery({
    ...runsQuery(teamId, { trackId: plan.trackId, bikeId }),
    enabled: riderId !== undefined,
  });
  return { isAsked: riderId === undefined || isAsked(runs), last: runs.data?.[0]?.condition ?? 'dry' };
}

const bikeOf = (plan: Plan, riderId: string | undefined) =>
  plan.riders.find((rider) => rider.riderId === riderId)?.bikeId ?? '';

/** The next run of one rider, and where it is logged: with the runs that wait on this device taken for ridden. */
export function RideNext({ plan, place, track, fleet, setups, ground }: RideNextProps) {
  const { account, membership } = useMembership();
  const { teamId, role } = membership;
  const { riderId } = place;
  const [inForm, setInForm] = useState<string | null>(null);
  const { taken, waiting, take } = useTakenPlaces(plan.id, riderId, inForm);
  const next = nextAfter(plan, riderId, taken);
  const bikeId = bikeOf(plan, riderId);
  const bike = fleet.bikes.find(({ id }) => id === bikeId);
  if (place.restIsStale) {
    return (
      <Section title={texts.orderRest}>
        <OrderRest teamId={teamId} planId={plan.id} riderId={riderId} />
      </Section>
    );
  }
  if (waiting.some(({ message }) => message.spoilt != null)) {
    return (
      <Section title={texts.waitsForOrder}>
        <Text>{texts.waitsForOrderLead}</Text>
      </Section>
    );
  }
  if (next === undefined) {
    return (
      <Section title={texts.allRidden}>
        <Text>{role === 'rider' ? texts.waitForClosing : texts.allRiddenLead}</Text>
      </Section>
    );
  }
  const title = texts.next(next.position, place.ridden + place.left);
  if (track === undefined) {
    return (
      <Section title={title}>
        <Text>{texts.noTrack}</Text>
      </Section>
    );
  }
  const setupId = setupOfArm(plan, next.letter, bikeId);
  return (
    <Section title={title}>
      <NextRun plan={plan} next={next} bikeId={bikeId} setups={setups}>
        {ground.isAsked && (
          <PlanRunForm
            // Every run begins with empty fields, on the ground of the last one.
            key={next.position}
            account={account.id}
            teamId={teamId}
            ride={() => ({
              bikeId,
              riderId,
              ...(setupId !== null && { setupId }),
              day: localDay(new Date()),
            })}
            plan={{ id: plan.id, position: next.position }}
            bikeName={bike?.name ?? ''}
            track={track}
            hasShock={bike?.shockUnitId !== null}
            condition={ground.last}
            save={texts.saveRun(next.position, next.letter)}
            onKey={setInForm}
            onSaved={() => take(next.position)}
          />
        )}
      </NextRun>
    </Section>
  );
}
