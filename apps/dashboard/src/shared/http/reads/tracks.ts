import { queryOptions } from '@tanstack/react-query';
import { byName } from '../../format/by-name.js';
import { allPages } from '../all-pages.js';
import { api, bodyOf } from '../client.js';
import type { components } from '../generated/schema.js';
import { keys } from '../keys.js';

export type Track = components['schemas']['TrackDto'];

/** The tracks of a team. */
export const tracksQuery = (teamId: string) =>
  queryOptions({
    queryKey: keys.tracks(teamId),
    queryFn: () =>
      allPages((query) =>
        bodyOf(api.GET('/api/v1/teams/{teamId}/tracks', { params: { path: { teamId }, query } })),
      ).then(byName),
  });
