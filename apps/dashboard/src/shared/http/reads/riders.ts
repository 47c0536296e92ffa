import { queryOptions } from '@tanstack/react-query';
import { byName } from '../../format/by-name.js';
import { allPages } from '../all-pages.js';
import { api, bodyOf } from '../client.js';
import type { components } from '../generated/schema.js';
import { keys } from '../keys.js';

export type Rider = components['schemas']['RiderDto'];

/** The riders of a team; a rider sees only themselves. */
export const ridersQuery = (teamId: string) =>
  queryOptions({
    queryKey: keys.riders(teamId),
    queryFn: () =>
      allPages((query) =>
        bodyOf(api.GET('/api/v1/teams/{teamId}/riders', { params: { path: { teamId }, query } })),
      ).then(byName),
  });
