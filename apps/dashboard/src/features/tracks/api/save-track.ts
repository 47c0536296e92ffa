import { api, bodyOf, idempotencyKey, ifMatch } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';
import type { Track } from '../../../shared/http/reads/tracks.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

export type TrackInput = components['schemas']['TrackInputDto'];

/** Adds a track, or changes the one that was read. */
export function useSaveTrack(teamId: string, existing: Track | undefined) {
  return useSubmission({
    send: (body: TrackInput, key) =>
      bodyOf(
        existing === undefined
          ? api.POST('/api/v1/teams/{teamId}/tracks', {
              params: { path: { teamId } },
              headers: idempotencyKey(key),
              body,
            })
          : api.PUT('/api/v1/teams/{teamId}/tracks/{id}', {
              params: { path: { teamId, id: existing.id }, header: ifMatch(existing.version) },
              body,
            }),
      ),
    // The altitude of a track moves every hit height read there.
    refreshes: [keys.tracks(teamId), keys.baselines(teamId), keys.demand(teamId)],
  });
}
