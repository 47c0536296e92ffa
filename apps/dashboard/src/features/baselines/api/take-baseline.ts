import { api, bodyOf, idempotencyKey } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { changedBySetup } from '../../../shared/http/keys.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

type TakingSeveral = components['schemas']['TakeSeveralDto'];
type Taking = components['schemas']['TakeBaselineDto'];

/** Takes a baseline: a new set-up of the bike, and a decision record with what is expected of it. */
export const useTakeBaseline = (teamId: string, baselineId: string) =>
  useSubmission({
    send: (body: Taking, key) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/baselines/{id}/take', {
          params: { path: { teamId, id: baselineId } },
          headers: idempotencyKey(key),
          body,
        }),
      ),
    refreshes: changedBySetup(teamId),
  });

/** Takes the baselines of several bikes, or none of them. */
export const useTakeSeveral = (teamId: string) =>
  useSubmission({
    send: (body: TakingSeveral, key) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/baselines/take', {
          params: { path: { teamId } },
          headers: idempotencyKey(key),
          body,
        }),
      ),
    refreshes: changedBySetup(teamId),
  });
