import { choleskyInPlace, inverseFromCholesky } from '../numerics/cholesky.js';
import type { PairEffect } from './component.js';
import type { ConditionalPosterior } from './conditional-posterior.js';
import type { DemandDesign } from './design.js';

/** One of the posteriors that are merged, with its share of their weight. */
interface MergedPart {
  posterior: ConditionalPosterior;
  share: number;
}

/**
 * Effects of riders on single tracks in a merged part of the mixture: of each pair the linear form in the levels η of
 * its cells that keeps mean and variance of the effect and its covariance with these levels; equation D8.
 */
export function mergedEffects(design: DemandDesign, parts: readonly MergedPart[]): PairEffect[] {
  return design.pairs.map(({ cells }, p) => {
    const unknowns = cells.map((c) => design.cellUnknowns[c] as Int32Array);
    const moments = new EffectMoments(unknowns, cells, p);
    for (const part of parts) moments.addMeans(part);
    for (const part of parts) moments.addSpread(part);
    return moments.regression();
  });
}

/** Mean and covariance of one pair's effect and the levels η of its cells over all parts, gathered in two passes. */
class EffectMoments {
  private readonly size: number;
  private effectMean = 0;
  private effectVariance = 0;
  private readonly levelMeans: number[];
  private readonly between: number[];
  private readonly withEffect: number[];

  constructor(
    private readonly unknowns: readonly Int32Array[],
    private readonly cells: readonly number[],
    private readonly pair: number,
  ) {
    this.size = cells.length;
    // Most pairs have one cell: an array of one number is made far quicker than one of typed numbers.
    this.levelMeans = new Array<number>(this.size).fill(0);
    this.between = new Array<number>(this.size * this.size).fill(0);
    this.withEffect = new Array<number>(this.size).fill(0);
  }

  addMeans({ posterior, share }: MergedPart): void {
    this.effectMean += share * this.effectMeanIn(posterior);
    for (let k = 0; k < this.size; k += 1) {
      this.levelMeans[k] = (this.levelMeans[k] as number) + share * this.levelMeanIn(posterior, k);
    }
  }

  /** Of which one part's covariance is made up, and how far its means lie from those of all. */
  addSpread({ posterior, share }: MergedPart): void {
    const { effects } = posterior;
    const offset = this.effectMeanIn(posterior) - this.effectMean;
    let variance = effects.variance[this.pair] as number;
    for (let k = 0; k < this.size; k += 1) {
      const levelOffset = this.levelMeanIn(posterior, k) - (this.levelMeans[k] as number);
      let withEffect = 0;
      for (let l = 0; l < this.size; l += 1) {
        const within = levelCovariance(
          posterior,
          this.unknowns[k] as Int32Array,
          this.unknowns[l] as Int32Array,
        );
        withEffect -= (effects.pull[this.cells[l] as number] as number) * within;
        const other = this.levelMeanIn(posterior, l) - (this.levelMeans[l] as number);
        const at = k * this.size + l;
        this.between[at] = (this.between[at] as number) + share * (within + levelOffset * other);
      }
      variance -= (effects.pull[this.cells[k] as number] as number) * withEffect;
      this.withEffect[k] = (this.withEffect[k] as number) + share * (withEffect + offset * levelOffset);
    }
    this.effectVariance += share * (variance + offset * offset);
  }

  /** The effect regressed on the levels. */
  regression(): PairEffect {
    const pulls = solve(this.between, this.withEffect).map((value) => -value);
    let offset = this.effectMean;
    let variance = this.effectVariance;
    for (const [k, pull] of pulls.entries()) {
      offset += pull * (this.levelMeans[k] as number);
      variance += pull * (this.withEffect[k] as number);
    }
    // A rest that rounding has pushed below 0 is 0.
    return { offset, variance: Math.max(0, variance), pulls };
  }

  private effectMeanIn(posterior: ConditionalPosterior): number {
    let mean = posterior.effects.offset[this.pair] as number;
    for (let k = 0; k < this.size; k += 1) {
      mean -= (posterior.effects.pull[this.cells[k] as number] as number) * this.levelMeanIn(posterior, k);
    }
    return mean;
  }

  private levelMeanIn({ mean }: ConditionalPosterior, cell: number): number {
    let sum = 0;
    for (const i of this.unknowns[cell] as Int32Array) sum += mean[i] as number;
    return sum;
  }
}

function levelCovariance(
  { mean, covariance }: ConditionalPosterior,
  rows: Int32Array,
  columns: Int32Array,
): number {
  const size = mean.length;
  let sum = 0;
  for (const i of rows) for (const j of columns) sum += covariance[i * size + j] as number;
  return sum;
}

/** Solution of a small symmetric positive definite system; zeros where it is singular, when there is nothing to share out. */
function solve(matrix: readonly number[], right: readonly number[]): number[] {
  const n = right.length;
  if (n === 1) {
    const [own = 0, value = 0] = [matrix[0], right[0]];
    return [own > 0 ? value / own : 0];
  }
  const factor = Float64Array.from(matrix);
  if (Number.isNaN(choleskyInPlace(factor, n))) return right.map(() => 0);
  const inverse = inverseFromCholesky(factor, n);
  return right.map((_, i) =>
    right.reduce((sum, value, j) => sum + (inverse[i * n + j] as number) * value, 0),
  );
}
