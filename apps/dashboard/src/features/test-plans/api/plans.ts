import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query';
import { api, bodyOf } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';

export type PlanSummary = components['schemas']['TestPlanSummaryDto'];
export type Plan = components['schemas']['TestPlanDto'];
export type PlannedRun = components['schemas']['PlannedRunDto'];
export type PlanProgress = components['schemas']['PlanProgressDto'];

const PAGE_LENGTH = 50;

interface PlanFilter {
  readonly state: 'open' | 'closed';
  readonly trackId?: string;
}

/** Test plans, newest first, a page at a time; a rider sees those that they ride in. */
export const plansQuery = (teamId: string, filter: PlanFilter) =>
  infiniteQueryOptions({
    queryKey: keys.testPlansIn(teamId, filter),
    queryFn: ({ pageParam }: { pageParam: string | undefined }) =>
      bodyOf(
        api.GET('/api/v1/teams/{teamId}/test-plans', {
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

/** One plan with its whole order. */
export const planQuery = (teamId: string, planId: string) =>
  queryOptions({
    queryKey: keys.testPlan(teamId, planId),
    queryFn: () =>
      bodyOf(api.GET('/api/v1/teams/{teamId}/test-plans/{id}', { params: { path: { teamId, id: planId } } })),
  });

/** The next run of each rider of a plan. */
export const progressQuery = (teamId: string, planId: string) =>
  queryOptions({
    queryKey: keys.planProgress(teamId, planId),
    queryFn: () =>
      bodyOf(
        api.GET('/api/v1/teams/{teamId}/test-plans/{id}/progress', {
          params: { path: { teamId, id: planId } },
        }),
      ),
  });
