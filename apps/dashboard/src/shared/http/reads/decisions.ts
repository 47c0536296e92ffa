import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query';
import { api, bodyOf } from '../client.js';
import type { components } from '../generated/schema.js';
import { keys } from '../keys.js';

export type Decision = components['schemas']['DecisionDto'];

const list = (teamId: string, bikeId: string, limit: number) =>
  bodyOf(
    api.GET('/api/v1/teams/{teamId}/decisions', { params: { path: { teamId }, query: { bikeId, limit } } }),
  ).then(({ items }) => items);

/** The last decision about a bike, in a list of one; empty before the first. */
export const lastDecisionQuery = (teamId: string, bikeId: string) =>
  queryOptions({
    queryKey: keys.lastDecision(teamId, bikeId),
    queryFn: () => list(teamId, bikeId, 1),
  });

const HISTORY_LENGTH = 100;

/** The decisions about a bike, newest first. */
export const decisionHistoryQuery = (teamId: string, bikeId: string) =>
  queryOptions({
    queryKey: keys.decisionHistory(teamId, bikeId),
    queryFn: () => list(teamId, bikeId, HISTORY_LENGTH),
  });

/** Which decisions: about a bike, for a rider, for a track. */
export interface DecisionFilter {
  readonly bikeId?: string;
  readonly riderId?: string;
  readonly trackId?: string;
}

const PAGE_LENGTH = 20;

/** Decisions, newest first, a page at a time; a rider sees those of their own bikes. */
export const decisionsQuery = (teamId: string, filter: DecisionFilter & { readonly outcome?: 'open' }) =>
  infiniteQueryOptions({
    queryKey: keys.decisionsOf(teamId, filter),
    queryFn: ({ pageParam }: { pageParam: string | undefined }) =>
      bodyOf(
        api.GET('/api/v1/teams/{teamId}/decisions', {
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
