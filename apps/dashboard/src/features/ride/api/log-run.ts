import { api, bodyOf, idempotencyKey } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

export type RunInput = components['schemas']['RunInputDto'];

/** Logs a run, once, however often the line breaks. */
export const useLogRun = (teamId: string) =>
  useSubmission({
    send: (body: RunInput, key) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/runs', {
          params: { path: { teamId } },
          headers: idempotencyKey(key),
          body,
        }),
      ),
    refreshes: [keys.runs(teamId), keys.sessions(teamId), keys.demand(teamId), keys.baselines(teamId)],
  });
