import type { BoundRows } from './bound-factor.js';
import { BoundProduct } from './bound-product.js';
import type { BoundedCell, DemandDesign } from './design.js';

/** The bounds of a design for a run sd (log m), their limits counted from `centre` (log m). */
export class BoundsAtRunSd implements BoundRows {
  readonly limit: Float64Array;
  readonly variance: Float64Array;
  readonly side: Int8Array;
  private readonly products = new Map<number, BoundProduct>();

  constructor({ bounds }: DemandDesign, runSd: number, centre: number) {
    this.limit = bounds.limit.map((value) => value - centre);
    this.variance = bounds.variance.map((value) => runSd * runSd + value);
    this.side = bounds.side;
  }

  /** The product of a cell's bounds; its table is kept, for it is asked for at many levels. */
  productOf({ cell, first, last }: BoundedCell): BoundProduct {
    const known = this.products.get(cell);
    if (known !== undefined) return known;
    const product = new BoundProduct({
      limit: this.limit.subarray(first, last),
      variance: this.variance.subarray(first, last),
      side: this.side.subarray(first, last),
    });
    this.products.set(cell, product);
    return product;
  }
}
