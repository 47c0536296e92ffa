import { useMutation, useQueryClient } from '@tanstack/react-query';
import { api, bodyOf, idempotencyKey, ifMatch } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';
import type { PlannedSession } from '../../../shared/http/reads/planned-sessions.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

export type PlannedSessionInput = components['schemas']['PlannedSessionInputDto'];

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
