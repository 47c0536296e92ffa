import { useState, type ReactNode } from 'react';
import { formatMoment, formatRunTime } from '../../../shared/format/time.js';
import { newKey } from '../../../shared/device/new-key.js';
import { Warning } from '../../../shared/ui/note.js';
import { PlainButton } from '../../../shared/ui/plain-button.js';
import { readingsText } from '../model/readings-text.js';
import type { QueuedRun } from '../queue/queued-run.js';
import { useQueueState, useRunQueue } from '../queue/use-run-queue.js';
import { myBikeTexts } from '../my-bike-texts.js';
import classes from './ride.module.css';

interface QueuedRunsProps {
  /** The link to the form in which a refused run is corrected. */
  readonly correct: (run: QueuedRun) => ReactNode;
  /** The link to sign in again. */
  readonly signIn: ReactNode;
}

/** What waits on this phone, with its figures, and what the service has refused, with what to do. */
export function QueuedRuns({ correct, signIn }: QueuedRunsProps) {
  const { runs, sending, last } = useQueueState();
  if (runs.length === 0) return null;
  const waiting = runs.filter(({ refusal }) => refusal === null).length;
  const state = sending ? myBikeTexts.sending : myBikeTexts.waitingFor[last];
  return (
    <section className={classes.queue} aria-label={myBikeTexts.queue}>
      {waiting > 0 && (
        <p role="status" className={classes.changed}>
          {myBikeTexts.waiting(waiting)} {state} {!sending && last === 'signed-out' && signIn}
        </p>
      )}
      <ol>
        {runs.map((run) => (
          <li key={run.key}>
            <div className={classes.queuedHead}>
              <span>{run.names.track}</span>
              <span>
                {run.message.timeS == null ? myBikeTexts.notTimed : formatRunTime(run.message.timeS)}
              </span>
            </div>
            <div className={classes.quiet}>
              {run.plan !== undefined && `${myBikeTexts.ofPlan(run.plan.position)} · `}
              {myBikeTexts.loggedAt(formatMoment(run.loggedAt))}
            </div>
            <div>{readingsText(run.message)}</div>
            {run.refusal !== null && <Refused run={run} correct={correct} />}
          </li>
        ))}
      </ol>
    </section>
  );
}

/** The same run, on the set-up that was ridden, as any other: under a key of its own, since it is another request. */
const withoutPlan = (run: QueuedRun): QueuedRun => ({
  ...run,
  key: newKey(),
  plan: undefined,
  refusal: null,
});

/** Why the service did not take a run. Nothing is dropped unless the rider says so, twice. */
function Refused({ run, correct }: { run: QueuedRun } & Pick<QueuedRunsProps, 'correct'>) {
  const queue = useRunQueue();
  const [asking, setAsking] = useState(false);
  return (
    <>
      <Warning word={`${myBikeTexts.refused}: ${run.refusal?.title ?? ''}.`}>{run.refusal?.detail}</Warning>
      {asking ? (
        <div className={classes.acts}>
          <span>{myBikeTexts.discardAsk}</span>
          <PlainButton onClick={() => void queue.discard(run.key)}>{myBikeTexts.discardYes}</PlainButton>
          <PlainButton variant="default" onClick={() => setAsking(false)}>
            {myBikeTexts.discardNo}
          </PlainButton>
        </div>
      ) : (
        <div className={classes.acts}>
          {correct(run)}
          <PlainButton variant="default" onClick={() => void queue.retry(run)}>
            {myBikeTexts.sendAgain}
          </PlainButton>
          {run.plan !== undefined && run.message.setupId !== undefined && (
            <PlainButton variant="default" onClick={() => void queue.replace(run.key, withoutPlan(run))}>
              {myBikeTexts.withoutPlan}
            </PlainButton>
          )}
          <PlainButton variant="default" onClick={() => setAsking(true)}>
            {myBikeTexts.discard}
          </PlainButton>
        </div>
      )}
    </>
  );
}
