import { queryOptions } from '@tanstack/react-query';
import { byName } from '../../format/by-name.js';
import { allPages } from '../all-pages.js';
import { api, bodyOf } from '../client.js';
import type { components } from '../generated/schema.js';
import { keys } from '../keys.js';

export type Bike = components['schemas']['BikeDto'];

/** The bikes of a team; a rider sees only their own. */
export const bikesQuery = (teamId: string) =>
  queryOptions({
    queryKey: keys.bikes(teamId),
    queryFn: () =>
      allPages((query) =>
        bodyOf(api.GET('/api/v1/teams/{teamId}/bikes', { params: { path: { teamId }, query } })),
      ).then(byName),
  });
