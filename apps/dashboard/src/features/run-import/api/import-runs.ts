import { api, asFile, bodyOf, idempotencyKey } from '../../../shared/http/client.js';
import { keys } from '../../../shared/http/keys.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

/** Stores the runs of a file: all of them or none. */
export const useImportRuns = (teamId: string) =>
  useSubmission({
    send: (csv: string, key) => {
      const { headers, ...file } = asFile('text/csv', csv);
      return bodyOf(
        api.POST('/api/v1/teams/{teamId}/runs/import', {
          params: { path: { teamId } },
          headers: { ...headers, ...idempotencyKey(key) },
          ...file,
        }),
      );
    },
    refreshes: [keys.team(teamId)],
  });
