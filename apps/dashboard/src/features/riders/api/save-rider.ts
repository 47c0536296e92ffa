import { api, bodyOf, idempotencyKey, ifMatch } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';
import type { Rider } from '../../../shared/http/reads/riders.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

export type RiderInput = components['schemas']['RiderInputDto'];

/** Adds a rider, or changes the one that was read. */
export function useSaveRider(teamId: string, existing: Rider | undefined) {
  return useSubmission({
    send: (body: RiderInput, key) =>
      bodyOf(
        existing === undefined
          ? api.POST('/api/v1/teams/{teamId}/riders', {
              params: { path: { teamId } },
              headers: idempotencyKey(key),
              body,
            })
          : api.PUT('/api/v1/teams/{teamId}/riders/{id}', {
              params: { path: { teamId, id: existing.id }, header: ifMatch(existing.version) },
              body,
            }),
      ),
    // A rider's mass and wishes change every baseline.
    refreshes: [keys.riders(teamId), keys.baselines(teamId)],
  });
}
