import { agrees, archived } from '../../platform/archive/archived.js';
import { flag, list, nullable, number, part, text, whole, word } from '../../platform/archive/checks.js';
import { LOOKS } from './looks.js';
import { PlannedRunEntity } from './planned-run.entity.js';
import { TestPlanArmEntity } from './test-plan-arm.entity.js';
import { TRENDS } from './test-plan-input.dto.js';
import { TestPlanEntity } from './test-plan.entity.js';

const [MAX_NAME, MAX_NOTE, MAX_ARM_NAME] = [200, 1_000, 100];
const [MAX_ARMS, MAX_RUNS, MAX_SENTENCES, MAX_POSITION] = [8, 5_000, 20, 100_000];
const [MAX_WARM_UPS, MAX_RUNS_AN_ARM] = [10, 20];
const MAX_MARGIN = 0.2;
const KINDS = ['warm-up', 'counted'];
const LETTER = word([...'ABCDEFGH']);
const anyNumber = nullable(number(-1e12, 1e12));
const share = nullable(number(0, 1));

/** A plan as the evidence library made it. */
const made = part({
  seed: whole(0),
  blind: flag,
  letters: list(part({ arm: text(MAX_ARM_NAME), letter: LETTER }), MAX_ARMS),
  runs: list(
    part({
      rider: text(MAX_NAME),
      position: whole(1, MAX_POSITION),
      kind: word(KINDS),
      arm: text(MAX_ARM_NAME),
      letter: LETTER,
    }),
    MAX_RUNS,
  ),
  score: part({
    residualDf: whole(-MAX_RUNS, MAX_RUNS),
    pairs: list(
      part({ first: whole(0), second: whole(0), inflation: anyNumber, unscaledVariance: anyNumber }),
      MAX_ARMS ** 2,
    ),
    maxInflation: anyNumber,
    meanInflation: anyNumber,
    meanVariance: anyNumber,
  }),
  carryOverBalanced: flag,
  statement: part({
    detectableDifference: anyNumber,
    powerAtMargin: share,
    powerOfEquivalence: share,
    runsForDifference: anyNumber,
    runsForEquivalence: anyNumber,
    sentences: list(text(MAX_NOTE), MAX_SENTENCES),
  }),
});

export const TEST_PLAN_ARCHIVE = archived(TestPlanEntity, {
  people: ['createdBy', 'closedBy'],
  columns: {
    name: text(MAX_NAME),
    margin: number(0, MAX_MARGIN),
    trend: word(TRENDS),
    seed: whole(0),
    looks: word(LOOKS),
    warmUps: whole(0, MAX_WARM_UPS),
    runsAnArm: whole(1, MAX_RUNS_AN_ARM),
    made,
    scatter: nullable(part({ sd: number(0, 10), df: number(0, 1e9) })),
    closingNote: nullable(text(MAX_NOTE)),
  },
});

export const TEST_PLAN_ARM_ARCHIVE = archived(TestPlanArmEntity, {
  columns: { name: text(MAX_ARM_NAME), letter: LETTER },
  rules: [agrees('setupId', 'bikeId')],
});

export const PLANNED_RUN_ARCHIVE = archived(PlannedRunEntity, {
  columns: { kind: word(KINDS), position: whole(1, MAX_POSITION) },
  rules: [agrees('armId', 'planId'), agrees('runId', 'riderId')],
});
