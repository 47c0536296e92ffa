import { queryOptions } from '@tanstack/react-query';
import { api, bodyOf } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';

export type BikeEnds = components['schemas']['BikeEndsDto'];
export type BikeEnd = components['schemas']['BikeEndDto'];

/** What the engine needs of a bike's fork and shock, on a track or, without one, at sea level. */
export const bikeEndsQuery = (teamId: string, bikeId: string, trackId: string | undefined) =>
  queryOptions({
    // Under the set-ups: whatever changes them changes what is in the bike now.
    queryKey: [...keys.setups(teamId), bikeId, 'ends', trackId],
    queryFn: () =>
      bodyOf(
        api.GET('/api/v1/teams/{teamId}/bikes/{bikeId}/ends', {
          params: { path: { teamId, bikeId }, query: trackId === undefined ? {} : { trackId } },
        }),
      ),
  });
