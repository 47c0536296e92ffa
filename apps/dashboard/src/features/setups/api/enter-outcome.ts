import { api, bodyOf, ifMatch } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';
import type { Decision } from '../../../shared/http/reads/decisions.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

type Outcome = components['schemas']['OutcomeInputDto'];

/** Enters what came of a decision, once. */
export const useEnterOutcome = (teamId: string, decision: Decision) =>
  useSubmission({
    send: (body: Outcome) =>
      bodyOf(
        api.PUT('/api/v1/teams/{teamId}/decisions/{id}/outcome', {
          params: { path: { teamId, id: decision.id }, header: ifMatch(decision.version) },
          body,
        }),
      ),
    refreshes: [keys.decisions(teamId), keys.pit(teamId)],
  });
