import { api, bodyOf, idempotencyKey, ifMatch } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';
import type { SpringUnit } from '../../../shared/http/reads/spring-units.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

export type SpringUnitInput = components['schemas']['SpringUnitInputDto'];

/** Adds a fork or shock, or changes the one that was read. */
export function useSaveSpringUnit(teamId: string, existing: SpringUnit | undefined) {
  return useSubmission({
    send: (body: SpringUnitInput, key) =>
      bodyOf(
        existing === undefined
          ? api.POST('/api/v1/teams/{teamId}/spring-units', {
              params: { path: { teamId } },
              headers: idempotencyKey(key),
              body,
            })
          : api.PUT('/api/v1/teams/{teamId}/spring-units/{id}', {
              params: { path: { teamId, id: existing.id }, header: ifMatch(existing.version) },
              body,
            }),
      ),
    // A unit's figures change every hit height and baseline behind it.
    refreshes: [keys.team(teamId)],
  });
}
