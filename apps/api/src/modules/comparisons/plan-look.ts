import type { ComparisonRequest } from '@loamledger/evidence';
import type { Plan } from '../test-plans/plan-answer.js';
import type { LoggedPlanRun } from '../test-plans/plan-reader.js';

type PlanRow = Pick<Plan, 'row'>;

/** What of a plan's times may be looked at now. */
export interface PlanLook {
  /** Null: the only one. */
  readonly look: ComparisonRequest['look'];
  readonly runs: readonly LoggedPlanRun[];
  /** Counted runs since the last whole block: they wait for the next look. */
  readonly waiting: number;
}

/**
 * The look at a plan's counted runs. Looked at after every block, an open plan shows whole blocks only, each rider on
 * each arm once more: whoever looks in between sees the same as before, and spends nothing. A closed plan shows all.
 */
export function lookAt({ row }: PlanRow, logged: readonly LoggedPlanRun[]): PlanLook {
  const counted = logged.filter(({ kind }) => kind === 'counted');
  if (row.looks === 'at the end') return { look: null, runs: counted, waiting: 0 };
  const { blocks, length } = wholeBlocks({ row }, counted);
  const rest = counted.length - length;
  // A run that counts again after its block was ridden anew makes no look beyond those agreed.
  const nth = (number: number) => ({
    number: Math.min(Math.max(1, number), row.runsAnArm),
    of: row.runsAnArm,
  });
  if (row.closedAt === null) return { look: nth(blocks), runs: counted.slice(0, length), waiting: rest };
  return { look: nth(rest > 0 ? blocks + 1 : blocks), runs: counted, waiting: 0 };
}

/** Number of whole blocks, and how many runs had been ridden when the last was whole. */
function wholeBlocks({ row }: PlanRow, counted: readonly LoggedPlanRun[]) {
  const cells = new Map(row.made.runs.map(({ rider, letter }) => [`${rider} ${letter}`, 0]));
  let blocks = 0;
  let length = 0;
  for (const [i, { run, letter }] of counted.entries()) {
    const cell = `${run.riderId} ${letter}`;
    if (run.voidedAt === null) cells.set(cell, (cells.get(cell) ?? 0) + 1);
    const whole = Math.min(...cells.values());
    if (whole > blocks) {
      blocks = whole;
      length = i + 1;
    }
  }
  return { blocks, length };
}
