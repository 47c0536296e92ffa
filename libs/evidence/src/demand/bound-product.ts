import { logNormalCdf } from '../numerics/normal.js';
import type { BoundRows } from './bound-factor.js';

/** Nodes lie this share of the sharpest bound's sd apart: interpolation is then right to 5e-9 a bound (0.25⁶/(6!·2⁶)). */
const SPACING = 0.25;
/** Nodes are added this many at a time. */
const NODES_AHEAD = 16;
/** A table would grow beyond this many nodes only for bounds far sharper than what is asked; then each is worked out. */
const MOST_NODES = 4096;
const NUMBERS_A_NODE = 3;

/**
 * log Π Φ(side·(level − limit)/√variance) of some bounds on one level (log m), dimensionless, as a table that grows as
 * it is asked: the same bounds are weighed at tens of thousands of levels. Value and two derivatives at equal steps,
 * between them Hermite's polynomial of degree five (davis1975).
 */
export class BoundProduct {
  private readonly spacing: number;
  /** Index of the first node; node i lies at i·spacing. */
  private first = 0;
  /** Value, derivative × spacing, second derivative × spacing² of each node. */
  private table = new Float64Array(0);

  constructor(private readonly bounds: BoundRows) {
    this.spacing = SPACING * Math.sqrt(bounds.variance.reduce((least, value) => Math.min(least, value)));
  }

  /** log of the product at a level, log metres. */
  logAt(level: number): number {
    const place = level / this.spacing;
    const node = Math.floor(place);
    if (!this.covers(node)) return this.nodeAt(level).value;
    const t = place - node;
    const at = (node - this.first) * NUMBERS_A_NODE;
    const { table } = this;
    const value = table[at] as number;
    const slope = table[at + 1] as number;
    const bend = table[at + 2] as number;
    // What the node's parabola misses at the next node, in value, slope and bend.
    const rise = (table[at + 3] as number) - value - slope - bend / 2;
    const turn = (table[at + 4] as number) - slope - bend;
    const twist = (table[at + 5] as number) - bend;
    const cubic = 10 * rise - 4 * turn + twist / 2;
    const quartic = -15 * rise + 7 * turn - twist;
    const quintic = 6 * rise - 3 * turn + twist / 2;
    return value + t * (slope + t * (bend / 2 + t * (cubic + t * (quartic + t * quintic))));
  }

  /** Whether node and node + 1 are in the table, after growing it where it may. */
  private covers(node: number): boolean {
    const nodes = this.table.length / NUMBERS_A_NODE;
    if (node >= this.first && node + 1 < this.first + nodes) return true;
    const from = nodes === 0 ? node - NODES_AHEAD : Math.min(this.first, node - NODES_AHEAD);
    const to = Math.max(nodes === 0 ? node : this.first + nodes - 1, node + 1 + NODES_AHEAD);
    if (!(to - from < MOST_NODES)) return false;
    const grown = new Float64Array((to - from + 1) * NUMBERS_A_NODE);
    grown.set(this.table, nodes === 0 ? 0 : (this.first - from) * NUMBERS_A_NODE);
    for (let i = from; i <= to; i += 1) {
      if (i >= this.first && i < this.first + nodes) continue;
      const { value, slope, bend } = this.nodeAt(i * this.spacing);
      grown.set([value, slope * this.spacing, bend * this.spacing ** 2], (i - from) * NUMBERS_A_NODE);
    }
    this.first = from;
    this.table = grown;
    return true;
  }

  /** log of the product and its first two derivatives, reading by reading. */
  private nodeAt(level: number): { value: number; slope: number; bend: number } {
    const sum = { value: 0, slope: 0, bend: 0 };
    const { limit, variance, side } = this.bounds;
    for (const [j, towards] of side.entries()) {
      const sd = Math.sqrt(variance[j] as number);
      const { value, slope, curvature } = logNormalCdf((towards * (level - (limit[j] as number))) / sd);
      sum.value += value;
      sum.slope += (towards * slope) / sd;
      sum.bend -= curvature / (variance[j] as number);
    }
    return sum;
  }
}
