import { queryOptions } from '@tanstack/react-query';
import { api, bodyOf, idempotencyKey } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

export type WorkOrder = components['schemas']['WorkOrderDto'];
export type WorkStep = components['schemas']['WorkStepDto'];

const LIST_LENGTH = 20;

/** The newest work orders of a bike. */
export const bikeWorkQuery = (teamId: string, bikeId: string) =>
  queryOptions({
    queryKey: [...keys.workOrders(teamId), 'bike', bikeId],
    queryFn: () =>
      bodyOf(
        api.GET('/api/v1/teams/{teamId}/work-orders', {
          params: { path: { teamId }, query: { bikeId, limit: LIST_LENGTH } },
        }),
      ).then(({ items }) => items),
  });

export const workOrderQuery = (teamId: string, id: string) =>
  queryOptions({
    queryKey: [...keys.workOrders(teamId), id],
    queryFn: () =>
      bodyOf(api.GET('/api/v1/teams/{teamId}/work-orders/{id}', { params: { path: { teamId, id } } })),
  });

const refreshes = (teamId: string) => [
  keys.workOrders(teamId),
  keys.pit(teamId),
  keys.spacers(teamId),
  keys.springUnits(teamId),
];

/** Makes the order that gets a bike from what is in it to a set-up. */
export const useMakeWorkOrder = (teamId: string) =>
  useSubmission({
    send: (setupId: string, key) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/work-orders', {
          params: { path: { teamId } },
          headers: idempotencyKey(key),
          body: { setupId },
        }),
      ),
    refreshes: refreshes(teamId),
  });

/** Says that a step is done, or is not. */
export const useTickStep = (teamId: string, stepId: string) =>
  useSubmission({
    send: (isDone: boolean, key) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/work-steps/{id}/tick', {
          params: { path: { teamId, id: stepId } },
          headers: idempotencyKey(key),
          body: { isDone },
        }),
      ),
    refreshes: refreshes(teamId),
  });
