import type { ComparisonRun } from './comparison-request.js';
import { fisherExact } from './tests.js';

/** Void runs of one set-up, and how likely such a split between it and the current one is by chance. */
export interface VoidCount {
  arm: string;
  voided: number;
  ridden: number;
  p: number | null;
}

/** Void runs of every set-up, sorted by its id. */
export function voidCounts(runs: readonly ComparisonRun[], current: string): VoidCount[] {
  const arms = [...new Set(runs.map((run) => run.arm))].sort();
  const of = (arm: string): { voided: number; ridden: number } => {
    const own = runs.filter((run) => run.arm === arm);
    return { voided: own.filter((run) => run.voided).length, ridden: own.length };
  };
  const base = of(current);
  return arms.map((arm) => {
    const own = of(arm);
    const p =
      arm === current || base.ridden === 0
        ? null
        : fisherExact(own.voided, own.ridden - own.voided, base.voided, base.ridden - base.voided);
    return { arm, ...own, p };
  });
}
