import { api, bodyOf, idempotencyKey, ifMatch } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { changedByRun, keys } from '../../../shared/http/keys.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

type PlanVoidInput = components['schemas']['PlanVoidInputDto'];

/** Voids a run of a plan; what its rider has still to ride is ordered anew. */
export const useVoidPlanRun = (teamId: string, planId: string) =>
  useSubmission({
    send: (body: PlanVoidInput, key) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/test-plans/{id}/void-runs', {
          params: { path: { teamId, id: planId } },
          headers: idempotencyKey(key),
          body,
        }),
      ),
    refreshes: changedByRun(teamId),
  });

/** Orders anew what a rider has still to ride, after a run was voided or restored elsewhere. */
export const useOrderRest = (teamId: string, planId: string) =>
  useSubmission({
    send: (riderId: string, key) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/test-plans/{id}/rest', {
          params: { path: { teamId, id: planId } },
          headers: idempotencyKey(key),
          body: { riderId },
        }),
      ),
    refreshes: [keys.testPlans(teamId)],
  });

/** Closes a plan as it was read: nothing more is logged for it, and its riders see what the letters stood for. */
export const useClosePlan = (teamId: string, planId: string, version: number) =>
  useSubmission({
    send: (note: string) =>
      bodyOf(
        api.PUT('/api/v1/teams/{teamId}/test-plans/{id}/closing', {
          params: { path: { teamId, id: planId }, header: ifMatch(version) },
          body: { note },
        }),
      ),
    // A closed blind plan hides nothing any more.
    refreshes: [keys.team(teamId)],
  });
