import { api, bodyOf, idempotencyKey } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { changedByRun } from '../../../shared/http/keys.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

type Voiding = components['schemas']['VoidInputDto'];

/** Voids a run with a reason; it stays and is shown. */
export const useVoidRun = (teamId: string, runId: string) =>
  useSubmission({
    send: (body: Voiding, key) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/runs/{id}/void', {
          params: { path: { teamId, id: runId } },
          headers: idempotencyKey(key),
          body,
        }),
      ),
    refreshes: changedByRun(teamId),
  });
