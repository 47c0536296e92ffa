import { useState } from 'react';
import { useQueueState } from '../features/ride/queue/use-run-queue.js';
import { savedAfter } from '../features/test-plans/model/order.js';

/**
 * The places of a plan that one rider has runs for which the plan as it was read does not know: those that wait on this
 * device, and those that were saved while the page was open. The run that the form is about is not among them.
 */
export function useTakenPlaces(planId: string, riderId: string, inForm: string | null) {
  const waiting = useQueueState().runs.filter(
    (run) => run.plan?.id === planId && run.message.riderId === riderId && run.key !== inForm,
  );
  const places = waiting.flatMap(({ plan, refusal }) =>
    plan === undefined ? [] : [{ position: plan.position, isRefused: refusal !== null }],
  );
  // A run that was taken is off the device before the plan is read again: its place is remembered until then.
  const [saved, setSaved] = useState<readonly number[]>([]);
  const now = savedAfter(saved, places);
  if (now !== saved) setSaved(now);
  return {
    taken: [...now, ...places.map(({ position }) => position)],
    waiting,
    take: (position: number) => setSaved((before) => [...before, position]),
  };
}
