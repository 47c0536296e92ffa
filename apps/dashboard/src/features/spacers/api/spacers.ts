import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query';
import { api, bodyOf, idempotencyKey } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

export type SpacerStock = components['schemas']['SpacerStockDto'];
export type SpacerMovement = components['schemas']['SpacerMovementDto'];
type MovementInput = components['schemas']['SpacerMovementInputDto'];

/** How many spacers of each size lie in stock. */
export const spacersQuery = (teamId: string) =>
  queryOptions({
    queryKey: [...keys.spacers(teamId), 'stock'],
    queryFn: () =>
      bodyOf(api.GET('/api/v1/teams/{teamId}/spacers', { params: { path: { teamId } } })).then(
        ({ items }) => items,
      ),
  });

const PAGE_LENGTH = 20;

/** How the stock came to be, newest first, a page at a time. */
export const movementsQuery = (teamId: string) =>
  infiniteQueryOptions({
    queryKey: [...keys.spacers(teamId), 'movements'],
    queryFn: ({ pageParam }: { pageParam: string | undefined }) =>
      bodyOf(
        api.GET('/api/v1/teams/{teamId}/spacer-movements', {
          params: {
            path: { teamId },
            query: { limit: PAGE_LENGTH, ...(pageParam !== undefined && { cursor: pageParam }) },
          },
        }),
      ),
    initialPageParam: undefined as string | undefined,
    getNextPageParam: (page) => page.nextCursor ?? undefined,
    select: ({ pages }) => pages.flatMap(({ items }) => items),
  });

const refreshes = (teamId: string) => [
  keys.spacers(teamId),
  keys.pit(teamId),
  keys.springUnits(teamId),
  keys.setups(teamId),
];

/** Records a count, or spacers that came or went. */
export const useMoveSpacers = (teamId: string) =>
  useSubmission({
    send: (body: MovementInput, key) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/spacer-movements', {
          params: { path: { teamId } },
          headers: idempotencyKey(key),
          body,
        }),
      ),
    refreshes: refreshes(teamId),
  });

/** Undoes a movement by a reversing one. */
export const useReverseMovement = (teamId: string, id: string) =>
  useSubmission({
    send: (note: string, key) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/spacer-movements/{id}/reverse', {
          params: { path: { teamId, id } },
          headers: idempotencyKey(key),
          body: { note },
        }),
      ),
    refreshes: refreshes(teamId),
  });
