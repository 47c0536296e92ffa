import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import { byName } from '../../../shared/format/by-name.js';
import { api, bodyOf } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';

export type Pit = components['schemas']['PitDto'];
export type PitBike = components['schemas']['PitBikeDto'];
export type PitEnd = components['schemas']['PitEndDto'];
export type PitRun = components['schemas']['PitRunDto'];

/** The air of the day: without a track, that of the newest run's; without a temperature, the usual one. */
export interface PitAir {
  readonly trackId?: string;
  readonly airTemperatureC?: number;
}

/** The fleet at a glance. Another temperature changes figures only: those of before stay until it is read. */
export const pitQuery = (teamId: string, air: PitAir) =>
  queryOptions({
    queryKey: keys.pitIn(teamId, air),
    queryFn: async () => {
      const call = api.GET('/api/v1/teams/{teamId}/pit', { params: { path: { teamId }, query: air } });
      const { bikes, ...rest } = await bodyOf(call);
      return { ...rest, bikes: byName(bikes) };
    },
    placeholderData: keepPreviousData,
  });
