import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query';
import { api, bodyOf } from '../client.js';
import type { components } from '../generated/schema.js';
import { keys } from '../keys.js';

export type Run = components['schemas']['RunDto'];

interface RunFilter {
  readonly trackId?: string;
  readonly bikeId?: string;
}

const PAGE_LENGTH = 50;

/** Runs, newest first, a page at a time; a rider sees their own. */
export const runsQuery = (teamId: string, filter: RunFilter) =>
  infiniteQueryOptions({
    queryKey: keys.runsOf(teamId, filter),
    queryFn: ({ pageParam }: { pageParam: string | undefined }) =>
      bodyOf(
        api.GET('/api/v1/teams/{teamId}/runs', {
          params: {
            path: { teamId },
            query: { ...filter, limit: PAGE_LENGTH, ...(pageParam !== undefined && { cursor: pageParam }) },
          },
        }),
      ),
    initialPageParam: undefined as string | undefined,
    getNextPageParam: (page) => page.nextCursor ?? undefined,
    select: ({ pages }) => pages.flatMap(({ items }) => items),
  });

const RECENT = 8;

/** The last runs on a bike, newest first: few, since a phone waits for them on a bad line. */
export const recentRunsQuery = (teamId: string, bikeId: string) =>
  queryOptions({
    queryKey: keys.recentRuns(teamId, bikeId),
    queryFn: () =>
      bodyOf(
        api.GET('/api/v1/teams/{teamId}/runs', {
          params: { path: { teamId }, query: { bikeId, limit: RECENT } },
        }),
      ).then(({ items }) => items),
  });
