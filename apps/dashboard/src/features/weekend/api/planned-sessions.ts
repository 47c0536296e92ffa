import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import { allPages } from '../../../shared/http/all-pages.js';
import { api, bodyOf, idempotencyKey, ifMatch } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

export type PlannedSession = components['schemas']['PlannedSessionDto'];
export type PlannedSessionInput = components['schemas']['PlannedSessionInputDto'];

/** The sessions planned on a track in these days, in the order in which they start. */
export const plannedSessionsQuery = (
  teamId: string,
  place: { trackId: string; fromDay: string; toDay: string },
) =>
  queryOptions({
    queryKey: [...keys.plannedSessions(teamId), place],
    queryFn: () =>
      allPages((page) =>
        bodyOf(
          api.GET('/api/v1/teams/{teamId}/planned-sessions', {
            params: { path: { teamId }, query: { ...place, ...page } },
          }),
        ),
      ).then((sessions) => sessions.toSorted((a, b) => startOf(a).localeCompare(startOf(b)))),
  });

const startOf = ({ day, startsAt }: PlannedSession) => `${day} ${startsAt}`;

/** Plans a session, or changes the one that was read. */
export const useSavePlannedSession = (teamId: string, existing: PlannedSession | undefined) =>
  useSubmission({
    send: (body: PlannedSessionInput, key) =>
      bodyOf(
        existing === undefined
          ? api.POST('/api/v1/teams/{teamId}/planned-sessions', {
              params: { path: { teamId } },
              headers: idempotencyKey(key),
              body,
            })
          : api.PUT('/api/v1/teams/{teamId}/planned-sessions/{id}', {
              params: { path: { teamId, id: existing.id }, header: ifMatch(existing.version) },
              body,
            }),
      ),
    refreshes: [keys.plannedSessions(teamId)],
  });

/** Takes a session off the plan. */
export function useRemovePlannedSession(teamId: string) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (id: string) =>
      bodyOf(
        api.DELETE('/api/v1/teams/{teamId}/planned-sessions/{id}', { params: { path: { teamId, id } } }),
      ),
    onSuccess: () => queries.invalidateQueries({ queryKey: keys.plannedSessions(teamId) }),
  });
}
