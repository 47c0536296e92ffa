import type { PlannedRun } from '@loamledger/evidence';
import { newId } from '../../platform/database/new-id.js';
import type { PlannedRunEntity } from './planned-run.entity.js';
import type { TestPlanArmEntity } from './test-plan-arm.entity.js';
import type { TestPlanInputDto } from './test-plan-input.dto.js';
import type { TestPlanEntity } from './test-plan.entity.js';

type ArmRow = Omit<TestPlanArmEntity, 'createdAt'>;
type RunRow = Omit<PlannedRunEntity, 'createdAt'>;

/** The rows of a new plan's arms and runs. */
export function plannedRows(
  plan: TestPlanEntity,
  input: TestPlanInputDto,
): { arms: ArmRow[]; runs: RunRow[] } {
  const letters = new Map(plan.made.letters.map(({ arm, letter }) => [arm, letter]));
  const arms = input.arms.flatMap(({ name, setups }, i) =>
    setups.map(({ bikeId, setupId }) => ({
      teamId: plan.teamId,
      id: newId(),
      planId: plan.id,
      name,
      letter: letters.get(name) ?? '',
      current: i === 0,
      bikeId,
      setupId,
    })),
  );
  const bikes = new Map(input.riders.map(({ riderId, bikeId }) => [riderId, bikeId]));
  const runs = plan.made.runs.map((run) => runRow(plan, run, arms, bikes.get(run.rider) ?? ''));
  return { arms, runs };
}

/** The row of one planned run on the rider's bike. */
export function runRow(
  plan: Pick<TestPlanEntity, 'teamId' | 'id'>,
  { rider, letter, kind, position }: PlannedRun,
  arms: readonly Pick<TestPlanArmEntity, 'id' | 'letter' | 'bikeId'>[],
  bikeId: string,
): RunRow {
  const arm = arms.find((candidate) => candidate.letter === letter && candidate.bikeId === bikeId);
  if (!arm) throw new Error(`The plan has no arm ${letter} on bike ${bikeId}: creation checks it.`);
  return {
    teamId: plan.teamId,
    id: newId(),
    planId: plan.id,
    riderId: rider,
    armId: arm.id,
    kind,
    position,
    runId: null,
    droppedAt: null,
  };
}
