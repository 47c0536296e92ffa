import { api, bodyOf, idempotencyKey } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { changedBySetup } from '../../../shared/http/keys.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

export type SetupInput = components['schemas']['SetupInputDto'];

/** Sets a bike up: its next revision, and a decision record with the reason. */
export const useCreateSetup = (teamId: string) =>
  useSubmission({
    send: (body: SetupInput, key) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/setups', {
          params: { path: { teamId } },
          headers: idempotencyKey(key),
          body,
        }),
      ),
    refreshes: changedBySetup(teamId),
  });
