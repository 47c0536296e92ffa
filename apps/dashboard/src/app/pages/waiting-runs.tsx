import { lazy, Suspense } from 'react';
import { myBikeTexts } from '../../features/ride/my-bike-texts.js';
import { useQueueState } from '../../features/ride/queue/use-run-queue.js';
import { LinkButton, TextLink } from '../../shared/ui/link.js';

const QueuedRuns = lazy(() =>
  import('../../features/ride/components/queued-runs.js').then((module) => ({ default: module.QueuedRuns })),
);

interface WaitingRunsProps {
  readonly teamId: string;
  /** Where to go on after signing in again. */
  readonly from: string;
}

/** What waits on this device, where anything does. */
export function WaitingRuns({ teamId, from }: WaitingRunsProps) {
  if (!useQueueState().runs.some((run) => run.teamId === teamId)) return null;
  return (
    <Suspense>
      <QueuedRuns
        signIn={
          <TextLink to="/sign-in" search={{ to: from }}>
            {myBikeTexts.signInAgain}
          </TextLink>
        }
        correct={(run) => (
          <LinkButton
            to="/teams/$teamId/my-bike/log-run"
            params={{ teamId: run.teamId }}
            search={{ bikeId: run.message.bikeId, correct: run.key }}
          >
            {myBikeTexts.correct}
          </LinkButton>
        )}
      />
    </Suspense>
  );
}
