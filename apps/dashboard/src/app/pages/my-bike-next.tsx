import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { nextSession } from '../../features/ride/model/next-session.js';
import { myBikeTexts as texts } from '../../features/ride/my-bike-texts.js';
import { useRiderPlans } from '../../features/test-plans/api/rider-plans.js';
import { riderTexts } from '../../features/test-plans/rider-texts.js';
import { formatClock } from '../../shared/format/time.js';
import type { Bike } from '../../shared/http/reads/bikes.js';
import { comingSessionsQuery, startOf } from '../../shared/http/reads/planned-sessions.js';
import classes from './my-bike-page.module.css';

/** Something that a rider rides next. */
interface Next {
  readonly label: string;
  readonly letter?: string | undefined;
  readonly title: string;
  readonly more: string;
  readonly planId: string | undefined;
  readonly trackId: string;
}

/**
 * What a rider rides next on a bike: its open plans, that of the next session first, then the session where it is of
 * none of them. Undefined while it is read.
 */
export function useNext(teamId: string, { id, riderId }: Bike, trackName: (id: string) => string) {
  const { plans, visible, isPending, error } = useRiderPlans(teamId, riderId, id);
  const sessions = useQuery(comingSessionsQuery(teamId));
  if (isPending || sessions.isPending) return undefined;
  const now = Date.now();
  const session = nextSession(sessions.data ?? [], riderId, now);
  const when = session === undefined ? '' : formatClock(Date.parse(startOf(session)), now);
  const isOfSession = (plan: { id: string }) => plan.id === session?.testPlanId;
  const rows: Next[] = plans
    .toSorted((a, b) => Number(isOfSession(b)) - Number(isOfSession(a)))
    .map((plan) => ({
      label: riderTexts.yourPlan,
      letter: plan.letter,
      title: [
        plan.letter === undefined ? riderTexts.allRidden : riderTexts.yourNext(plan.letter),
        ...(isOfSession(plan) ? [when] : []),
      ].join(' · '),
      more: plan.name,
      planId: plan.id,
      trackId: plan.trackId,
    }));
  if (session !== undefined && !plans.some(isOfSession)) {
    // A plan that the service does not show to who is here has neither name nor page for them.
    const plan = visible.find(isOfSession);
    const ridden = session.testPlanId === null ? texts.rideAndLog : (plan?.name ?? texts.aPlan);
    rows.push({
      label: texts.yourSession,
      title: texts.nextSession(when),
      more: [trackName(session.trackId), ridden, session.note].filter(Boolean).join(' · '),
      planId: plan?.id,
      trackId: session.trackId,
    });
  }
  return { rows, isKnown: (error ?? sessions.error) === null };
}

interface NextProps {
  readonly teamId: string;
  readonly rows: readonly Next[];
}

/** What is ridden next, each as a way to its plan or track that a glove hits. */
export const NextRows = ({ teamId, rows }: NextProps) =>
  rows.map(({ label, letter, title, more, planId, trackId }) => {
    const text = (
      <>
        {letter !== undefined && <span className={classes.letter}>{letter}</span>}
        <span>
          <strong>{title}</strong>
          <small>{more}</small>
        </span>
      </>
    );
    return (
      <section key={planId ?? trackId} aria-label={label}>
        {planId === undefined ? (
          <Link className={classes.next} to="/teams/$teamId/tracks/$trackId" params={{ teamId, trackId }}>
            {text}
          </Link>
        ) : (
          <Link className={classes.next} to="/teams/$teamId/test-plans/$planId" params={{ teamId, planId }}>
            {text}
          </Link>
        )}
      </section>
    );
  });
