import type { DemandDesign } from './design.js';

/**
 * Effects of riders on single tracks, given everything else: that of pair p is normal with mean
 * offset_p − Σ pull_c·η_c over its cells c (η_c = mu + track + rider + condition) and variance_p, independently of the
 * other pairs; equation D3. Offsets in log metres, variances in (log m)², pulls dimensionless.
 */
export interface PairEffects {
  /** One a pair. */
  offset: Float64Array;
  variance: Float64Array;
  /** One a cell. */
  pull: Float64Array;
}

/** The level of a run as a linear form in the unknowns, plus a normal rest: Σ factors·unknowns + offset + N(0, variance). */
export interface LevelForm {
  unknowns: readonly number[];
  factors: readonly number[];
  /** Log metres. */
  offset: number;
  /** (log m)². */
  variance: number;
}

/**
 * Level of a run whose pair has been ridden, effect of the pair included: η − Σ pull_c·η_c + offset.
 * `unknowns` are those of the run, `cells` those of the pair's cells, in the order of `effect.pulls`.
 */
export function levelWithEffect(
  unknowns: ArrayLike<number>,
  cells: readonly ArrayLike<number>[],
  effect: { offset: number; variance: number; pulls: readonly number[] },
): LevelForm {
  const factors = new Map<number, number>();
  const add = (list: ArrayLike<number>, by: number): void => {
    for (let k = 0; k < list.length; k += 1) {
      const unknown = list[k] as number;
      factors.set(unknown, (factors.get(unknown) ?? 0) + by);
    }
  };
  add(unknowns, 1);
  for (const [c, cell] of cells.entries()) add(cell, -(effect.pulls[c] as number));
  return {
    unknowns: [...factors.keys()],
    factors: [...factors.values()],
    offset: effect.offset,
    variance: effect.variance,
  };
}

/** Level of a cell of the design, effect of its pair included. */
export function levelOfCell(design: DemandDesign, effects: PairEffects, cell: number): LevelForm {
  const pair = design.cellPair[cell] as number;
  const cells = (design.pairs[pair] as DemandDesign['pairs'][number]).cells;
  return levelWithEffect(
    design.cellUnknowns[cell] as Int32Array,
    cells.map((c) => design.cellUnknowns[c] as Int32Array),
    {
      offset: effects.offset[pair] as number,
      variance: effects.variance[pair] as number,
      pulls: cells.map((c) => effects.pull[c] as number),
    },
  );
}
