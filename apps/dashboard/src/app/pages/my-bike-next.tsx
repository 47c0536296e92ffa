import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { nextSession } from '../../features/ride/model/next-session.js';
import { whatIsNext, type Next } from '../../features/ride/model/what-is-next.js';
import { useRiderPlans } from '../../features/test-plans/api/rider-plans.js';
import type { Bike } from '../../shared/http/reads/bikes.js';
import { comingSessionsQuery } from '../../shared/http/reads/planned-sessions.js';
import { isAsked } from '../../shared/ui/below.js';
import classes from './my-bike-page.module.css';

/** What a rider rides next on a bike, and the readings that tell it. */
export function useNext(teamId: string, { id, riderId }: Bike, trackName: (id: string) => string) {
  const { plans, visible, isKnown, readings } = useRiderPlans(teamId, riderId, id);
  const sessions = useQuery(comingSessionsQuery(teamId));
  const now = Date.now();
  const session = nextSession(sessions.data ?? [], riderId, now);
  return {
    rows: whatIsNext({ plans, visible, session, trackName, now }),
    isAsked: [...readings, sessions].every(isAsked),
    /** Nothing else can be told than what the rows say. */
    isKnown: isKnown && sessions.data !== undefined,
    readings: [...readings, sessions],
  };
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
