import { queryOptions } from '@tanstack/react-query';
import { api, bodyOf } from '../client.js';
import type { components } from '../generated/schema.js';
import { keys } from '../keys.js';

export type Baseline = components['schemas']['BaselineDto'];
export type EndBaseline = components['schemas']['EndBaselineDto'];
export type EvaluatedFill = components['schemas']['EvaluatedFillDto'];

export type Ground = components['schemas']['VenueDto']['condition'];

/** Whether a track that was ridden is known only as at least so hard: too few of its readings are exact. */
export const isOnlyBounded = ({
  lowerBoundOnly,
  teamHere,
}: Pick<EndBaseline['evidence'], 'lowerBoundOnly' | 'teamHere'>): boolean => lowerBoundOnly && teamHere > 0;

/** The baselines of every bike on a track, or of one bike; on dry ground and in usual air where none is named. */
export const baselinesQuery = (
  teamId: string,
  place: { trackId: string; bikeId?: string; condition?: Ground; airTemperatureC?: number },
) =>
  queryOptions({
    queryKey: keys.baselinesOn(teamId, place),
    queryFn: () =>
      bodyOf(
        api.GET('/api/v1/teams/{teamId}/baselines', { params: { path: { teamId }, query: place } }),
      ).then(({ items }) => items),
  });
