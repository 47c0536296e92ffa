import type { RunScatter, TestPlan } from '@loamledger/evidence';
import { visibleRider, type TeamScope } from '../../platform/http/scope.js';
import type { Run } from '../runs/stored-runs.js';
import type { PlannedRunDto } from './planned-run.dto.js';
import type { PlannedRunEntity } from './planned-run.entity.js';
import type { PlanPrecisionDto, PlanStatementDto } from './plan-statement.dto.js';
import type { TestPlanArmEntity } from './test-plan-arm.entity.js';
import type { TestPlanEntity } from './test-plan.entity.js';
import type { PlanArmDto, PlanRiderStandingDto, TestPlanDto, TestPlanSummaryDto } from './test-plans.dto.js';

/** A plan as stored, with its arms. */
export interface Plan {
  readonly row: Readonly<TestPlanEntity>;
  readonly arms: readonly Readonly<TestPlanArmEntity>[];
}

const PER_CENT = 100;

/** Whether the member may see letters only: riders, while a blind plan is open. */
export const isBlindTo = (
  scope: Pick<TeamScope, 'role'>,
  plan: Pick<TestPlanEntity, 'blind' | 'closedAt'>,
): boolean => plan.blind && plan.closedAt === null && scope.role === 'rider';

/** A planned run with what was logged for it. */
export interface StandingRun {
  readonly planned: PlannedRunEntity;
  readonly run: Run | undefined;
}

export const summaryAnswer = (
  plan: Readonly<TestPlanEntity>,
  riders: PlanRiderStandingDto[],
): TestPlanSummaryDto => ({
  id: plan.id,
  name: plan.name,
  trackId: plan.trackId,
  sessionId: plan.sessionId,
  day: plan.day,
  blind: plan.blind,
  riders,
  createdAt: plan.createdAt.toISOString(),
  closedAt: plan.closedAt?.toISOString() ?? null,
});

export function planAnswer(
  scope: TeamScope,
  { row, arms }: Plan,
  standing: readonly StandingRun[],
  riders: PlanRiderStandingDto[],
): TestPlanDto {
  const blind = isBlindTo(scope, row);
  const own = visibleRider(scope);
  const runs = own ? standing.filter(({ planned }) => planned.riderId === own) : standing;
  const letters = new Map(arms.map(({ id, letter }) => [id, letter]));
  return {
    ...summaryAnswer(row, riders),
    marginPct: row.margin * PER_CENT,
    trend: row.trend,
    looks: row.looks,
    warmUps: row.warmUps,
    runsAnArm: row.runsAnArm,
    seed: blind ? null : row.seed,
    arms: armAnswers(arms, blind),
    runs: runs.map((run) => plannedRunAnswer(run, letters.get(run.planned.armId) ?? '')),
    precision: precisionAnswer(row.made),
    statement: statementAnswer(row.made, row.scatter),
    createdBy: row.createdBy,
    closingNote: row.closingNote,
    version: row.version,
  };
}

export const plannedRunAnswer = ({ planned, run }: StandingRun, letter: string): PlannedRunDto => ({
  riderId: planned.riderId,
  letter,
  kind: planned.kind,
  position: planned.position,
  runId: planned.runId,
  timeS: run?.time ?? null,
  voidReason: run?.voidReason ?? null,
});

function armAnswers(arms: Plan['arms'], blind: boolean): PlanArmDto[] {
  const letters = [...new Set(arms.map(({ letter }) => letter))].sort();
  return letters.map((letter) => {
    const own = arms.filter((arm) => arm.letter === letter);
    if (blind) return { letter, name: null, current: null, setups: [] };
    return {
      letter,
      name: own[0]?.name ?? null,
      current: own[0]?.current ?? null,
      setups: own.map(({ bikeId, setupId }) => ({ bikeId, setupId })),
    };
  });
}

export function precisionAnswer({
  score,
  carryOverBalanced,
}: Pick<TestPlan, 'score' | 'carryOverBalanced'>): PlanPrecisionDto {
  return {
    varianceInflation: score.maxInflation,
    efficiencyPct: score.meanInflation === null ? null : PER_CENT / score.meanInflation,
    residualDf: score.residualDf,
    carryOverBalanced,
  };
}

export function statementAnswer(
  { statement }: Pick<TestPlan, 'statement'>,
  scatter: RunScatter | null,
): PlanStatementDto {
  const { detectableDifference, powerAtMargin, powerOfEquivalence } = statement;
  return {
    scatterPct: scatter === null ? null : scatter.sd * PER_CENT,
    detectableDifferencePct:
      detectableDifference === null ? null : Math.expm1(detectableDifference) * PER_CENT,
    powerAtMarginPct: powerAtMargin === null ? null : powerAtMargin * PER_CENT,
    powerOfEquivalencePct: powerOfEquivalence === null ? null : powerOfEquivalence * PER_CENT,
    runsForDifference: statement.runsForDifference,
    runsForEquivalence: statement.runsForEquivalence,
    sentences: statement.sentences,
  };
}
