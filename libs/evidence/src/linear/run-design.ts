import { leastSquares, type LeastSquares } from './least-squares.js';

/** Trend over the session that a comparison takes out. */
export type OrderTrend = 'none' | 'linear' | 'quadratic';

/** A run as the linear model sees it. */
export interface DesignRun {
  /** Number of the arm, 0 for the one that the others are compared with. */
  arm: number;
  /** Number of the rider or session that has its own level. */
  block: number;
  /** Place in its session, from 1; a void run keeps its place. */
  position: number;
}

/** Columns of the model and where its parts are. */
export interface RunDesign {
  x: number[][];
  /** Column of each arm from 1 on. */
  armColumn: ReadonlyMap<number, number>;
  /** Columns of the trend, linear first. */
  trendColumns: readonly number[];
  /** Arms that no difference can be told of, because blocks and trend explain them. */
  confounded: readonly number[];
}

/**
 * Model matrix of log time: block levels, trend (place centred on the middle and scaled to ± 1), arms against arm 0.
 *
 * An arm whose column is a combination of blocks and trend alone is confounded and left out; so is arm 0's difference
 * to an arm that never meets it. Blocks and arms are numbered from 0.
 */
export function runDesign(runs: readonly DesignRun[], trend: OrderTrend): RunDesign {
  const blocks = [...new Set(runs.map((run) => run.block))];
  const arms = [...new Set(runs.map((run) => run.arm))].filter((arm) => arm > 0).sort((a, b) => a - b);
  const places = runs.map((run) => run.position);
  const centre = (Math.min(...places) + Math.max(...places)) / 2;
  const half = Math.max(1, Math.max(...places) - centre);
  const nuisance = runs.map((run) => {
    const o = (run.position - centre) / half;
    const trends = trend === 'none' ? [] : trend === 'linear' ? [o] : [o, o * o];
    return [...blocks.map((block) => Number(block === run.block)), ...trends];
  });
  const confounded = arms.filter((arm) => isExplained(nuisance, runs, arm));
  const kept = arms.filter((arm) => !confounded.includes(arm));
  const width = nuisance[0]?.length ?? 0;
  return {
    x: runs.map((run, i) => [...(nuisance[i] ?? []), ...kept.map((arm) => Number(arm === run.arm))]),
    armColumn: new Map(kept.map((arm, i) => [arm, width + i])),
    trendColumns: Array.from({ length: width - blocks.length }, (_, i) => blocks.length + i),
    confounded,
  };
}

function isExplained(nuisance: readonly number[][], runs: readonly DesignRun[], arm: number): boolean {
  const width = nuisance[0]?.length ?? 0;
  const fit = leastSquares(
    nuisance.map((row, i) => [...row, Number(runs[i]?.arm === arm)]),
    runs.map(() => 0),
  );
  return fit.aliased.includes(width);
}

/** Weights of the difference arm − other over the columns of a design. */
export function differenceWeights(design: RunDesign, arm: number, other: number): number[] {
  const width = design.x[0]?.length ?? 0;
  const weights = new Array<number>(width).fill(0);
  const plus = design.armColumn.get(arm);
  const minus = design.armColumn.get(other);
  if (plus !== undefined) weights[plus] = 1;
  if (minus !== undefined) weights[minus] = -1;
  return weights;
}

/** Whether a fit of the design has an arm that depends on the others: then no difference is what it seems. */
export const armsDepend = (design: RunDesign, fit: LeastSquares): boolean =>
  [...design.armColumn.values()].some((column) => fit.aliased.includes(column));
