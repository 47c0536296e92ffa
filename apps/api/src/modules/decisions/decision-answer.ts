import { ENDS } from '../suspension/end-inputs.js';
import type { DecisionEntity, ExpectedEnd, Observed } from './decision.entity.js';
import type { DecisionContext } from './decision-context.js';
import type { DecisionDto } from './decisions.dto.js';
import type { ExpectedEndDto } from './expectation.dto.js';
import type { ObservedDto } from './observed.dto.js';

const NOTHING_CHANGED = 'nothing but the note';
const FIRST = 'first set-up';

/** A decision as a message. */
export const decisionAnswer = (decision: DecisionEntity, context: DecisionContext): DecisionDto => ({
  id: decision.id,
  decidedAt: decision.createdAt.toISOString(),
  bikeId: decision.bikeId,
  riderId: decision.riderId,
  fromSetupId: decision.fromSetupId,
  toSetupId: decision.toSetupId,
  changes: [...context.changes],
  changesInWords: changesInWords(decision, context),
  trackId: decision.trackId,
  baselineId: decision.baselineId,
  testPlanId: decision.testPlanId,
  evidenceRuns: decision.evidenceRuns,
  reason: decision.reason,
  expected: decision.expected && {
    fork: expectedAnswer(decision.expected.fork),
    shock: expectedAnswer(decision.expected.shock),
  },
  observed: observedAnswer(context.observed),
  decidedBy: decision.decidedBy,
  decidedByName: context.decidedByName,
  outcome: decision.outcome,
  outcomeNote: decision.outcomeNote,
  outcomeAt: decision.outcomeAt?.toISOString() ?? null,
  version: decision.version,
});

function changesInWords({ fromSetupId }: DecisionEntity, { changes }: DecisionContext): string {
  if (fromSetupId === null) return FIRST;
  return changes.length === 0 ? NOTHING_CHANGED : inWordsByEnd(changes);
}

/** The name of an end once, before all that changed there. */
const inWordsByEnd = (changes: DecisionContext['changes']): string =>
  ENDS.map((end) => changes.filter((change) => change.end === end))
    .filter((changed) => changed.length > 0)
    .map((changed) => `${changed[0]?.end}: ${changed.map(({ inWords }) => inWords).join(', ')}`)
    .join('; ');

const expectedAnswer = (end: ExpectedEnd | null): ExpectedEndDto | null =>
  end && {
    sagPct: end.sagPct,
    medianTravelMm: end.medianTravelMm,
    travel95Mm: end.travel95Mm,
    riskPct: end.riskPct,
    hit: end.hit ?? null,
  };

const observedAnswer = ({ runs, voided, fork, shock }: Observed): ObservedDto => ({
  runs,
  voided,
  fork: fork && { ...fork },
  shock: shock && { ...shock },
});
