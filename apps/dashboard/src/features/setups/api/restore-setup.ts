import { api, bodyOf, idempotencyKey } from '../../../shared/http/client.js';
import { changedBySetup } from '../../../shared/http/keys.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

interface Restoring {
  /** The set-up to go back to. */
  readonly setupId: string;
  readonly reason: string;
}

/** Goes back to an earlier set-up: a new revision equal to it. */
export const useRestoreSetup = (teamId: string) =>
  useSubmission({
    send: ({ setupId, reason }: Restoring, key) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/setups/{id}/restore', {
          params: { path: { teamId, id: setupId } },
          headers: idempotencyKey(key),
          body: { reason },
        }),
      ),
    refreshes: changedBySetup(teamId),
  });
