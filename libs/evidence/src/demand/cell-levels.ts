import { MOST_UNKNOWNS, unknownsOf, type DemandDesign } from './design.js';
import { CONDITION_SD } from './reading.js';

/** Standard deviations of the effects that add up to the level of a cell, log metres, ≥ 0. */
export interface LevelSds {
  track: number;
  rider: number;
}

/**
 * The levels of the cells, mu + track + rider + condition, as sums of unknowns that are scaled by their prior sd
 * (equation D3): what a cell puts into a matrix over the unknowns, and reads out of a solution.
 *
 * Matrices are row-major of `size` rows, of those that are built the lower triangle.
 */
export class CellLevels {
  readonly size: number;
  private readonly scale: Float64Array;
  private readonly unknowns: Int32Array;
  private readonly unknownCount: Int32Array;

  constructor(
    private readonly design: DemandDesign,
    muSd: number,
  ) {
    this.size = unknownsOf(design);
    this.scale = new Float64Array(this.size).fill(CONDITION_SD);
    this.scale[0] = muSd;
    this.unknowns = design.packedUnknowns;
    this.unknownCount = Int32Array.from(design.cellUnknowns, ({ length }) => length);
  }

  /** Sets the standard deviations that unknowns are scaled by. */
  use(sds: LevelSds): void {
    const firstRider = 1 + this.design.tracks.length;
    this.scale.fill(sds.track, 1, firstRider);
    this.scale.fill(sds.rider, firstRider, firstRider + this.design.riders.length);
  }

  /** Adds weight·u uᵀ to a matrix and by·u to its right-hand side, u the scaled indicators of a cell's unknowns. */
  addCell(matrix: Float64Array, right: Float64Array, cell: number, weight: number, by: number): void {
    const { scale, size, unknowns, unknownCount } = this;
    const first = cell * MOST_UNKNOWNS;
    const last = first + (unknownCount[cell] as number);
    for (let k = first; k < last; k += 1) {
      const i = unknowns[k] as number;
      const own = scale[i] as number;
      right[i] = (right[i] as number) + own * by;
      const row = i * size;
      const weighted = own * weight;
      // The unknowns of a cell ascend, so those up to k make the lower triangle.
      for (let l = first; l <= k; l += 1) {
        const j = unknowns[l] as number;
        matrix[row + j] = (matrix[row + j] as number) + weighted * (scale[j] as number);
      }
    }
  }

  /** Adds weight·(u_c u_dᵀ + u_d u_cᵀ) to a matrix, for two cells. */
  addProduct(matrix: Float64Array, c: number, d: number, weight: number): void {
    const { scale, size, unknowns, unknownCount } = this;
    const firstRow = c * MOST_UNKNOWNS;
    const lastRow = firstRow + (unknownCount[c] as number);
    const firstColumn = d * MOST_UNKNOWNS;
    const lastColumn = firstColumn + (unknownCount[d] as number);
    for (let k = firstRow; k < lastRow; k += 1) {
      const i = unknowns[k] as number;
      const weighted = (scale[i] as number) * weight;
      for (let l = firstColumn; l < lastColumn; l += 1) {
        const j = unknowns[l] as number;
        const value = weighted * (scale[j] as number);
        if (i >= j) matrix[i * size + j] = (matrix[i * size + j] as number) + value;
        if (j >= i) matrix[j * size + i] = (matrix[j * size + i] as number) + value;
      }
    }
  }

  /** Mean of a cell's level by the means of the scaled unknowns. */
  mean(solution: Float64Array, cell: number): number {
    const { scale, unknowns, unknownCount } = this;
    const first = cell * MOST_UNKNOWNS;
    const last = first + (unknownCount[cell] as number);
    let mean = 0;
    for (let k = first; k < last; k += 1) {
      const i = unknowns[k] as number;
      mean += (scale[i] as number) * (solution[i] as number);
    }
    return mean;
  }

  /** Covariance of two cells' levels by that of the scaled unknowns. */
  covariance(inverse: Float64Array, c: number, d: number): number {
    const { scale, size, unknowns, unknownCount } = this;
    const firstRow = c * MOST_UNKNOWNS;
    const lastRow = firstRow + (unknownCount[c] as number);
    const firstColumn = d * MOST_UNKNOWNS;
    const lastColumn = firstColumn + (unknownCount[d] as number);
    let covariance = 0;
    for (let k = firstRow; k < lastRow; k += 1) {
      const i = unknowns[k] as number;
      let row = 0;
      for (let l = firstColumn; l < lastColumn; l += 1) {
        const j = unknowns[l] as number;
        row += (scale[j] as number) * (inverse[i * size + j] as number);
      }
      covariance += (scale[i] as number) * row;
    }
    return covariance;
  }

  /** Means and covariance of the unknowns in log metres by those of the scaled ones, mu counted from 0 again. */
  unscaled(
    solution: Float64Array,
    inverse: Float64Array,
    centre: number,
  ): { mean: Float64Array; covariance: Float64Array } {
    const { scale, size } = this;
    const mean = solution.map((value, i) => value * (scale[i] as number));
    mean[0] = (mean[0] ?? 0) + centre;
    const covariance = new Float64Array(size * size);
    for (let i = 0; i < size; i += 1) {
      const si = scale[i] as number;
      for (let j = 0; j < size; j += 1) {
        covariance[i * size + j] = si * (scale[j] as number) * (inverse[i * size + j] as number);
      }
    }
    return { mean, covariance };
  }
}
