import { formatClock } from '../../../shared/format/time.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { startOf, type PlannedSession } from '../../../shared/http/reads/planned-sessions.js';
import { myBikeTexts as texts } from '../my-bike-texts.js';

type Schemas = components['schemas'];
type PlanName = Pick<Schemas['TestPlanSummaryDto'], 'id' | 'name' | 'trackId'>;

/** An open plan that a rider rides in. */
export interface RiddenPlan extends PlanName {
  /** Where the rider is in it; undefined where that could not be read. */
  readonly place: Pick<Schemas['PlanProgressDto'], 'next' | 'restIsStale'> | undefined;
}

/** Something that a rider rides next. */
export interface Next {
  readonly label: string;
  readonly letter?: string | undefined;
  readonly title: string;
  readonly more: string;
  readonly planId: string | undefined;
  readonly trackId: string;
}

interface Known {
  /** The plans that the rider rides in, newest first. */
  readonly plans: readonly RiddenPlan[];
  /** All open plans that the person here may see. */
  readonly visible: readonly PlanName[];
  readonly session: PlannedSession | undefined;
  readonly trackName: (id: string) => string;
  /** ms. */
  readonly now: number;
}

/** What a rider rides next: the plan of the next session, the other plans, then the session where it is of none of them. */
export function whatIsNext({ plans, visible, session, trackName, now }: Known): Next[] {
  const when = session === undefined ? '' : formatClock(Date.parse(startOf(session)), now);
  const isOfSession = (plan: { id: string }) => plan.id === session?.testPlanId;
  const rows = plans
    .toSorted((a, b) => Number(isOfSession(b)) - Number(isOfSession(a)))
    .map((plan) => {
      const { title, ...told } = ofPlan(plan);
      return {
        ...told,
        label: texts.yourPlan,
        title: isOfSession(plan) ? `${title} · ${when}` : title,
        planId: plan.id,
        trackId: plan.trackId,
      };
    });
  if (session === undefined || plans.some(isOfSession)) return rows;
  // A plan that the service does not show to who is here has neither name nor page for them.
  const plan = visible.find(isOfSession);
  const ridden = session.testPlanId === null ? texts.rideAndLog : (plan?.name ?? texts.aPlan);
  const ofSession: Next = {
    label: texts.yourSession,
    title: texts.nextSession(when),
    more: [trackName(session.trackId), ridden, session.note].filter(Boolean).join(' · '),
    planId: plan?.id,
    trackId: session.trackId,
  };
  return [...rows, ofSession];
}

/** That every run is ridden is said only where the service says so: a stale order has no next run either. */
function ofPlan({ name, place }: RiddenPlan): Pick<Next, 'letter' | 'title' | 'more'> {
  if (place === undefined) return { title: name, more: texts.placeUnknown };
  if (place.restIsStale) return { title: texts.staleOrder, more: name };
  if (place.next === null) return { title: texts.allRidden, more: name };
  return { letter: place.next.letter, title: texts.yourNext(place.next.letter), more: name };
}
