import { api, bodyOf, idempotencyKey } from '../../../shared/http/client.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

/** Makes a single-use link by which a member sets a new password; it is shown once. */
export const useLinkPassword = (teamId: string, id: string) =>
  useSubmission({
    send: (_nothing: undefined, key) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/members/{id}/password-links', {
          params: { path: { teamId, id } },
          headers: idempotencyKey(key),
        }),
      ),
    refreshes: [],
  });
