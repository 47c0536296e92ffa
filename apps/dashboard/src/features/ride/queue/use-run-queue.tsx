import { useQueryClient } from '@tanstack/react-query';
import { createContext, use, useEffect, useState, useSyncExternalStore, type ReactNode } from 'react';
import { changedByRun } from '../../../shared/http/keys.js';
import { RunQueue, type QueueState } from './run-queue.js';

const QueueContext = createContext<RunQueue | null>(null);

/** Keeps the runs of the signed-in account, and sends them while any page of a team is open. */
export function RunQueueProvider({ account, children }: { account: string; children: ReactNode }) {
  const queries = useQueryClient();
  const [queue] = useState(
    () =>
      new RunQueue(account, ({ teamId }) => {
        changedByRun(teamId).forEach((queryKey) => void queries.invalidateQueries({ queryKey }));
      }),
  );
  useEffect(() => {
    queue.start();
    return () => queue.stop();
  }, [queue]);
  return <QueueContext value={queue}>{children}</QueueContext>;
}

/** The queue of the page. */
export function useRunQueue(): RunQueue {
  const queue = use(QueueContext);
  if (queue === null) throw new Error('There is a run queue on the pages of a team only.');
  return queue;
}

/** What waits, and whether it is being sent. */
export function useQueueState(): QueueState {
  const { subscribe, snapshot } = useRunQueue();
  return useSyncExternalStore(subscribe, snapshot);
}
