import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query';
import { api, bodyOf, idempotencyKey } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

export type UnitService = components['schemas']['UnitServiceDto'];
export type ServiceEntry = components['schemas']['ServiceEntryDto'];
type CareInput = components['schemas']['UnitCareInputDto'];
type EntryInput = components['schemas']['ServiceEntryInputDto'];

/** How a unit stands against its service interval. */
export const unitServiceQuery = (teamId: string, unitId: string) =>
  queryOptions({
    queryKey: keys.unitService(teamId, unitId),
    queryFn: () =>
      bodyOf(
        api.GET('/api/v1/teams/{teamId}/spring-units/{id}/service', {
          params: { path: { teamId, id: unitId } },
        }),
      ),
  });

const PAGE_LENGTH = 20;

/** Services of a unit and riding entered by hand, newest first, a page at a time. */
export const serviceEntriesQuery = (teamId: string, unitId: string) =>
  infiniteQueryOptions({
    queryKey: [...keys.unitService(teamId, unitId), 'entries'],
    queryFn: ({ pageParam }: { pageParam: string | undefined }) =>
      bodyOf(
        api.GET('/api/v1/teams/{teamId}/spring-units/{id}/service-entries', {
          params: {
            path: { teamId, id: unitId },
            query: { limit: PAGE_LENGTH, ...(pageParam !== undefined && { cursor: pageParam }) },
          },
        }),
      ),
    initialPageParam: undefined as string | undefined,
    getNextPageParam: (page) => page.nextCursor ?? undefined,
    select: ({ pages }) => pages.flatMap(({ items }) => items),
  });

const refreshes = (teamId: string, unitId: string) => [keys.unitService(teamId, unitId), keys.pit(teamId)];

/** Enters what the unit's manual says of its service. */
export const useEnterCare = (teamId: string, unitId: string) =>
  useSubmission({
    send: (body: CareInput, key) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/spring-units/{id}/care', {
          params: { path: { teamId, id: unitId } },
          headers: idempotencyKey(key),
          body,
        }),
      ),
    refreshes: refreshes(teamId, unitId),
  });

/** Records a service, or riding that no run tells of. */
export const useEnterService = (teamId: string, unitId: string) =>
  useSubmission({
    send: (body: EntryInput, key) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/spring-units/{id}/service-entries', {
          params: { path: { teamId, id: unitId } },
          headers: idempotencyKey(key),
          body,
        }),
      ),
    refreshes: refreshes(teamId, unitId),
  });

/** Takes an entry back; both stay. */
export const useTakeBackEntry = (teamId: string, { id, unitId }: ServiceEntry) =>
  useSubmission({
    send: (note: string, key) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/service-entries/{id}/take-back', {
          params: { path: { teamId, id } },
          headers: idempotencyKey(key),
          body: { note },
        }),
      ),
    refreshes: refreshes(teamId, unitId),
  });
