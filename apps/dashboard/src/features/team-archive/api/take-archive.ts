import { api, asFile, bodyOf, idempotencyKey } from '../../../shared/http/client.js';
import { keys } from '../../../shared/http/keys.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

const ARCHIVE = 'application/vnd.loamledger.team+json';

/** Makes a new team of an archive: all of it or nothing. */
export const useTakeArchive = () =>
  useSubmission({
    send: (archive: string, key) => {
      const { headers, ...file } = asFile(ARCHIVE, archive);
      return bodyOf(
        api.POST('/api/v1/teams/import', { headers: { ...headers, ...idempotencyKey(key) }, ...file }),
      );
    },
    refreshes: [keys.account],
  });
