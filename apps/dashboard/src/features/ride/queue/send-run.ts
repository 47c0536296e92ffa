import { api, bodyOf, idempotencyKey } from '../../../shared/http/client.js';
import { outcomeOf, type SendOutcome } from './answer.js';
import type { QueuedRun } from './queued-run.js';

/** Longer than the API takes for a run even under load; a line that needs longer has been lost. */
const LIMIT_MS = 20_000;

/** Sends a run under its key, once. */
export async function sendRun({ teamId, key, message }: QueuedRun): Promise<SendOutcome> {
  try {
    const stored = await bodyOf(
      api.POST('/api/v1/teams/{teamId}/runs', {
        params: { path: { teamId } },
        headers: idempotencyKey(key),
        body: message,
        signal: AbortSignal.timeout(LIMIT_MS),
      }),
    );
    // The login page of a public network answers everything with 200; only the stored run is a yes.
    return typeof stored.id === 'string' ? { kind: 'taken' } : { kind: 'unsure' };
  } catch (error) {
    return outcomeOf(error);
  }
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
