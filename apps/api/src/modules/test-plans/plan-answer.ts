import { visibleRider, type TeamScope } from '../../platform/http/scope.js';
import type { PlannedRunDto } from './planned-run.dto.js';
import type { PlannedRunEntity } from './planned-run.entity.js';
import type { PlanPrecisionDto, PlanStatementDto } from './plan-statement.dto.js';
import type { TestPlanArmEntity } from './test-plan-arm.entity.js';
import type { TestPlanEntity } from './test-plan.entity.js';
import type { PlanArmDto, TestPlanDto, TestPlanSummaryDto } from './test-plans.dto.js';

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

export const summaryAnswer = (plan: Readonly<TestPlanEntity>): TestPlanSummaryDto => ({
  id: plan.id,
  name: plan.name,
  trackId: plan.trackId,
  sessionId: plan.sessionId,
  day: plan.day,
  blind: plan.blind,
  createdAt: plan.createdAt.toISOString(),
  closedAt: plan.closedAt?.toISOString() ?? null,
});

export function planAnswer(
  scope: TeamScope,
  { row, arms }: Plan,
  standing: readonly PlannedRunEntity[],
): TestPlanDto {
  const blind = isBlindTo(scope, row);
  const own = visibleRider(scope);
  const runs = own ? standing.filter(({ riderId }) => riderId === own) : standing;
  const byId = new Map(arms.map((arm) => [arm.id, arm]));
  const riders = new Map(runs.map(({ riderId, armId }) => [riderId, byId.get(armId)?.bikeId ?? '']));
  return {
    ...summaryAnswer(row),
    marginPct: row.margin * PER_CENT,
    trend: row.trend,
    looks: row.looks,
    warmUps: row.warmUps,
    runsAnArm: row.runsAnArm,
    seed: blind ? null : row.seed,
    riders: [...riders].map(([riderId, bikeId]) => ({ riderId, bikeId })),
    arms: armAnswers(arms, blind),
    runs: runs.map((run) => plannedRunAnswer(run, byId.get(run.armId)?.letter ?? '')),
    precision: precisionAnswer(row),
    statement: statementAnswer(row),
    createdBy: row.createdBy,
    closingNote: row.closingNote,
    version: row.version,
  };
}

export const plannedRunAnswer = (run: PlannedRunEntity, letter: string): PlannedRunDto => ({
  riderId: run.riderId,
  letter,
  kind: run.kind,
  position: run.position,
  runId: run.runId,
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

function precisionAnswer({ made: { score, carryOverBalanced } }: Plan['row']): PlanPrecisionDto {
  return {
    varianceInflation: score.maxInflation,
    efficiencyPct: score.meanInflation === null ? null : PER_CENT / score.meanInflation,
    residualDf: score.residualDf,
    carryOverBalanced,
  };
}

function statementAnswer({ made: { statement }, scatter }: Plan['row']): PlanStatementDto {
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
