import { api, bodyOf, idempotencyKey } from '../../../shared/http/client.js';
import { changedByRun } from '../../../shared/http/keys.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

/** Lets a voided run count again. */
export const useRestoreRun = (teamId: string) =>
  useSubmission({
    send: (runId: string, key) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/runs/{id}/restore', {
          params: { path: { teamId, id: runId } },
          headers: idempotencyKey(key),
        }),
      ),
    refreshes: changedByRun(teamId),
  });
