import type { Decision } from '../../../shared/http/reads/decisions.js';
import { TextLink } from '../../../shared/ui/link.js';
import { texts } from '../texts.js';

interface RestsOnProps {
  readonly teamId: string;
  readonly decision: Decision;
}

/** What the decision rests on, each with the way to it where it has a page: the track's baseline, what a plan told. */
export function RestsOn({ teamId, decision }: RestsOnProps) {
  const { baselineId, trackId, testPlanId, evidenceRuns } = decision;
  return (
    <>
      {baselineId !== null && (
        <>
          ,{' '}
          {trackId === null ? (
            texts.onBaseline
          ) : (
            <TextLink size="sm" to="/teams/$teamId/tracks/$trackId" params={{ teamId, trackId }}>
              {texts.onBaseline}
            </TextLink>
          )}
        </>
      )}
      {testPlanId !== null && (
        <>
          ,{' '}
          <TextLink
            size="sm"
            to="/teams/$teamId/test-plans/$planId/comparison"
            params={{ teamId, planId: testPlanId }}
          >
            {texts.onPlan}
          </TextLink>
        </>
      )}
      {evidenceRuns !== null && `, ${texts.evidence(evidenceRuns)}`}
    </>
  );
}
