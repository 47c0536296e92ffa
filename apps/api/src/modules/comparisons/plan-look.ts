import type { Plan } from '../test-plans/plan-answer.js';
import type { LoggedPlanRun } from '../test-plans/plan-reader.js';

type PlanRow = Pick<Plan, 'row'>;

/** What of a plan's times may be looked at now. */
export interface Look {
  /** Number of the look, 1, 2, 3 …; null: the only one. */
  readonly number: number | null;
  readonly runs: readonly LoggedPlanRun[];
  /** Counted runs since the last whole block: they wait for the next look. */
  readonly waiting: number;
}

/**
 * The look at a plan's counted runs. Looked at after every block, an open plan shows whole blocks only, each rider on
 * each arm once more: whoever looks in between sees the same as before, and spends nothing. A closed plan shows all.
 */
export function lookAt({ row }: PlanRow, logged: readonly LoggedPlanRun[]): Look {
  const counted = logged.filter(({ kind }) => kind === 'counted');
  if (row.looks === 'at the end') return { number: null, runs: counted, waiting: 0 };
  const { blocks, length } = wholeBlocks({ row }, counted);
  const rest = counted.length - length;
  if (row.closedAt === null)
    return { number: Math.max(1, blocks), runs: counted.slice(0, length), waiting: rest };
  return { number: Math.max(1, rest > 0 ? blocks + 1 : blocks), runs: counted, waiting: 0 };
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
