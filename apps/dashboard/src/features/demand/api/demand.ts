import { queryOptions } from '@tanstack/react-query';
import { api, bodyOf } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';

export type TrackDemand = components['schemas']['TrackDemandDto'];

/** The end of the bikes that is shown before another is chosen. */
export const FIRST_END: TrackDemand['end'] = 'fork';

/** How hard a track hits one end of the bikes: every reading, and the forecast for each rider. */
export const demandQuery = (teamId: string, trackId: string, asked: Pick<TrackDemand, 'end' | 'condition'>) =>
  queryOptions({
    queryKey: keys.demandOn(teamId, trackId, asked),
    queryFn: () =>
      bodyOf(
        api.GET('/api/v1/teams/{teamId}/tracks/{trackId}/demand', {
          params: { path: { teamId, trackId }, query: asked },
        }),
      ),
  });
