import type { Bound } from './bound-factor.js';
import { BoundProduct } from './bound-product.js';
import type { BoundedCell, DemandDesign } from './design.js';

/** The bounds of a design for a run sd (log m), their limits counted from `centre` (log m). */
export class BoundsAtRunSd {
  private readonly limit: Float64Array;
  private readonly variance: Float64Array;
  private readonly side: Int8Array;
  private readonly products = new Map<number, BoundProduct>();

  constructor({ bounds }: DemandDesign, runSd: number, centre: number) {
    this.limit = bounds.limit.map((value) => value - centre);
    this.variance = bounds.variance.map((value) => runSd * runSd + value);
    this.side = bounds.side;
  }

  /** The bound in one row of the design. */
  at(row: number): Bound {
    return {
      limit: this.limit[row] as number,
      variance: this.variance[row] as number,
      side: this.side[row] as number,
    };
  }

  /** The product of a cell's bounds; its table is kept, for it is asked for at many levels. */
  productOf({ cell, first, last }: BoundedCell): BoundProduct {
    const known = this.products.get(cell);
    if (known !== undefined) return known;
    const product = new BoundProduct(Array.from({ length: last - first }, (_, i) => this.at(first + i)));
    this.products.set(cell, product);
    return product;
  }
}
