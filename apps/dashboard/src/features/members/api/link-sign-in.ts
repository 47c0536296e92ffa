import { api, bodyOf, idempotencyKey } from '../../../shared/http/client.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

/** Makes a single-use link by which a rider signs in on another phone; it is shown once. */
export const useLinkSignIn = (teamId: string, id: string) =>
  useSubmission({
    send: (endsOthers: boolean, key) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/members/{id}/sign-in-links', {
          params: { path: { teamId, id } },
          headers: idempotencyKey(key),
          body: { endsOthers },
        }),
      ),
    refreshes: [],
  });
