import { agrees, archived } from '../../platform/archive/archived.js';
import { nullable, number, part, text, whole, word, message } from '../../platform/archive/checks.js';
import { DecisionEntity, OUTCOMES } from './decision.entity.js';
import { ObservedDto } from './observed.dto.js';

const MAX_TEXT = 1_000;
const MAX_RUNS = 1e9;
const travel = nullable(number(0, 300));

const expectedEnd = nullable(
  part(
    {
      sagPct: number(0, 100),
      medianTravelMm: travel,
      travel95Mm: travel,
      riskPct: nullable(number(0, 100)),
      hit: nullable(part({ logMean: number(-20, 5), levelSd: number(0, 20), runSd: number(0, 20) })),
    },
    ['hit'],
  ),
);

export const DECISION_ARCHIVE = archived(DecisionEntity, {
  people: ['decidedBy', 'outcomeBy'],
  columns: {
    evidenceRuns: nullable(whole(0, MAX_RUNS)),
    reason: text(MAX_TEXT),
    expected: nullable(part({ fork: expectedEnd, shock: expectedEnd })),
    observed: nullable(message(ObservedDto, (observed: object) => ({ ...observed }))),
    outcome: nullable(word(OUTCOMES)),
    outcomeNote: nullable(text(MAX_TEXT)),
  },
  rules: [
    agrees('toSetupId', 'bikeId'),
    agrees('fromSetupId', 'bikeId'),
    agrees('baselineId', 'bikeId'),
    (row) =>
      (row.outcome === null) === (row.outcomeAt === null)
        ? []
        : [{ field: 'outcomeAt', given: null, allowed: 'there with an outcome only' }],
  ],
});
