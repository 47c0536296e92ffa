import { api, bodyOf, idempotencyKey } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { changedBySetup } from '../../../shared/http/keys.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

export type Change = components['schemas']['ChangeInputDto'];

/** Makes the proposal the bike's next set-up, with a decision record of what the service expects of it. */
export const useProposeChange = (teamId: string) =>
  useSubmission({
    send: (body: Change, key) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/changes', {
          params: { path: { teamId } },
          headers: idempotencyKey(key),
          body,
        }),
      ),
    refreshes: changedBySetup(teamId),
  });
