import { api, bodyOf, ifMatch } from '../../../shared/http/client.js';
import { keys } from '../../../shared/http/keys.js';
import { useSubmission } from '../../../shared/http/use-submission.js';
import type { MeasuredUnit } from '../model/measured-unit.js';

/** Writes what was measured into the unit as it was read; a unit that was changed meanwhile is refused. */
export const useWriteMeasured = (teamId: string) =>
  useSubmission({
    send: ({ id, version, body }: MeasuredUnit) =>
      bodyOf(
        api.PUT('/api/v1/teams/{teamId}/spring-units/{id}', {
          params: { path: { teamId, id }, header: ifMatch(version) },
          body,
        }),
      ),
    // A unit's figures change every hit height and baseline behind it.
    refreshes: [keys.team(teamId)],
  });
