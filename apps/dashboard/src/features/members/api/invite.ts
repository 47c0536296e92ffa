import { api, bodyOf, idempotencyKey } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

export type InvitationInput = components['schemas']['InvitationInputDto'];

/** Makes a single-use link into the team; it is shown once. */
export const useInvite = (teamId: string) =>
  useSubmission({
    send: (body: InvitationInput, key) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/invitations', {
          params: { path: { teamId } },
          headers: idempotencyKey(key),
          body,
        }),
      ),
    refreshes: [],
  });
