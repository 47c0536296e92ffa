import { api, bodyOf, idempotencyKey } from '../../../shared/http/client.js';
import { outcomeOf, type SendOutcome } from './answer.js';
import type { QueuedRun } from './queued-run.js';

/** Longer than the API takes for a run even under load; a line that needs longer has been lost. */
const LIMIT_MS = 20_000;

/** Sends a run under its key, once. */
export async function sendRun(run: QueuedRun): Promise<SendOutcome> {
  try {
    const id = run.plan === undefined ? await storedRun(run) : await storedPlanRun(run, run.plan);
    // The login page of a public network answers everything with 200; only the stored run is a yes.
    return typeof id === 'string' ? { kind: 'taken' } : { kind: 'unsure' };
  } catch (error) {
    return outcomeOf(error);
  }
}

const storedRun = async ({ teamId, key, message }: QueuedRun): Promise<unknown> =>
  (
    await bodyOf(
      api.POST('/api/v1/teams/{teamId}/runs', {
        params: { path: { teamId } },
        headers: idempotencyKey(key),
        body: message,
        signal: AbortSignal.timeout(LIMIT_MS),
      }),
    )
  ).id;

/** Bike, set-up and track are the plan's to say. */
async function storedPlanRun(
  { teamId, key, message }: QueuedRun,
  { id, position }: NonNullable<QueuedRun['plan']>,
): Promise<unknown> {
  // What is undefined is not sent.
  const ridden = { ...message, bikeId: undefined, setupId: undefined, trackId: undefined, position };
  const step = await bodyOf(
    api.POST('/api/v1/teams/{teamId}/test-plans/{id}/runs', {
      params: { path: { teamId, id } },
      headers: idempotencyKey(key),
      body: ridden,
      signal: AbortSignal.timeout(LIMIT_MS),
    }),
  );
  return step.runId;
}

/** Whether the session is that of `account`: nobody sends another's runs under their own name. */
export async function isSignedInAs(account: string): Promise<SendOutcome> {
  try {
    const { id } = await bodyOf(
      api.GET('/api/v1/accounts/current', { signal: AbortSignal.timeout(LIMIT_MS) }),
    );
    if (typeof id !== 'string') return { kind: 'unsure' };
    return { kind: id === account ? 'taken' : 'signed-out' };
  } catch (error) {
    return outcomeOf(error);
  }
}
