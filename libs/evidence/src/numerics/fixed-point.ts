import { dot } from './matrix.js';

/** Earlier steps that are mixed with the last one. */
const DEPTH = 3;
/** A step whose part that is new is this small against it (squares) adds nothing but rounding. */
const NOTHING_NEW = 1e-10;

/**
 * Speeds up a fixed-point iteration x → g(x): the next x is the mixture of the last few g(x) whose residuals g(x) − x
 * cancel best in least squares, each coordinate weighed (anderson1965). In working space of its own.
 */
export class FixedPoint {
  /** Of each place in the cycle of the last steps: x and g(x) then, residuals as differences of the two. */
  private readonly residuals: Float64Array[];
  private readonly images: Float64Array[];
  /** Differences between the steps, made orthogonal to one another. */
  private readonly turns: Float64Array[];
  private readonly moves: Float64Array[];
  private readonly rest: Float64Array;
  private known = 0;

  constructor(private readonly size: number) {
    const space = (count: number) => Array.from({ length: count }, () => new Float64Array(size));
    this.residuals = space(DEPTH + 1);
    this.images = space(DEPTH + 1);
    this.turns = space(DEPTH);
    this.moves = space(DEPTH);
    this.rest = new Float64Array(size);
  }

  /** Forgets all steps. */
  restart(): void {
    this.known = 0;
  }

  /** Puts the mixture in the place of `image` = g(from). */
  mix(from: Float64Array, image: Float64Array, weights: Float64Array): void {
    const { size, rest } = this;
    const place = (back: number): number => (this.known - back) % (DEPTH + 1);
    const residual = this.residuals[place(0)] as Float64Array;
    for (let i = 0; i < size; i += 1) {
      residual[i] = (weights[i] as number) * ((image[i] as number) - (from[i] as number));
    }
    (this.images[place(0)] as Float64Array).set(image);
    rest.set(residual);
    for (let k = 0; k < Math.min(this.known, DEPTH); k += 1) {
      const turn = this.turns[k] as Float64Array;
      const move = this.moves[k] as Float64Array;
      subtract(turn, this.residuals[place(k)] as Float64Array, this.residuals[place(k + 1)] as Float64Array);
      subtract(move, this.images[place(k)] as Float64Array, this.images[place(k + 1)] as Float64Array);
      const whole = dot(turn, turn);
      for (let l = 0; l < k; l += 1) {
        const earlier = this.turns[l] as Float64Array;
        const square = dot(earlier, earlier);
        if (!(square > 0)) continue;
        const share = dot(turn, earlier) / square;
        addTo(turn, -share, earlier);
        addTo(move, -share, this.moves[l] as Float64Array);
      }
      const square = dot(turn, turn);
      if (!(square > NOTHING_NEW * whole)) {
        turn.fill(0);
        continue;
      }
      const share = dot(rest, turn) / square;
      addTo(rest, -share, turn);
      addTo(image, -share, move);
    }
    this.known += 1;
  }
}

function subtract(into: Float64Array, a: Float64Array, b: Float64Array): void {
  for (let i = 0; i < into.length; i += 1) into[i] = (a[i] as number) - (b[i] as number);
}

function addTo(into: Float64Array, share: number, what: Float64Array): void {
  for (let i = 0; i < into.length; i += 1) into[i] = (into[i] as number) + share * (what[i] as number);
}
