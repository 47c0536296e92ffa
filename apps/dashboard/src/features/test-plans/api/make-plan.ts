import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import { api, bodyOf, idempotencyKey } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

export type PlanInput = components['schemas']['TestPlanInputDto'];
export type PlanSize = components['schemas']['PlanPreviewInputDto'];
export type PlanPreview = components['schemas']['PlanPreviewDto'];

/** What a plan of a size could tell; the last answer stays while the next one is reckoned. */
export const previewQuery = (teamId: string, size: PlanSize) =>
  queryOptions({
    queryKey: keys.planPreview(teamId, size),
    queryFn: () =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/test-plans/preview', { params: { path: { teamId } }, body: size }),
      ),
    placeholderData: keepPreviousData,
  });

/** Makes a plan, once. */
export const useMakePlan = (teamId: string) =>
  useSubmission({
    send: (body: PlanInput, key) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/test-plans', {
          params: { path: { teamId } },
          headers: idempotencyKey(key),
          body,
        }),
      ),
    refreshes: [keys.testPlans(teamId)],
  });
