import { api, bodyOf, idempotencyKey } from '../../../shared/http/client.js';
import { keys } from '../../../shared/http/keys.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

/** Makes a team; who makes it is its first mechanic. */
export const useCreateTeam = () =>
  useSubmission({
    send: (name: string, key) =>
      bodyOf(api.POST('/api/v1/teams', { headers: idempotencyKey(key), body: { name } })),
    refreshes: [keys.account],
  });
