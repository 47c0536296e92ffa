import { api, bodyOf, idempotencyKey, ifMatch } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';
import type { Bike } from '../../../shared/http/reads/bikes.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

export type BikeInput = components['schemas']['BikeInputDto'];

/** Adds a bike, or changes the one that was read. */
export function useSaveBike(teamId: string, existing: Bike | undefined) {
  return useSubmission({
    send: (body: BikeInput, key) =>
      bodyOf(
        existing === undefined
          ? api.POST('/api/v1/teams/{teamId}/bikes', {
              params: { path: { teamId } },
              headers: idempotencyKey(key),
              body,
            })
          : api.PUT('/api/v1/teams/{teamId}/bikes/{id}', {
              params: { path: { teamId, id: existing.id }, header: ifMatch(existing.version) },
              body,
            }),
      ),
    // A bike's figures change every hit height and baseline behind it.
    refreshes: [keys.team(teamId)],
  });
}
