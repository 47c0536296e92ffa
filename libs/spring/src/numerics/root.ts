/** A point of the function whose root is sought. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface RootResult {
  readonly status: 'found' | 'not-bracketed' | 'not-converged';
  /** Where the function is nearest to 0 of all points tried. */
  readonly x: number;
  readonly evaluations: number;
}

const MOST_EVALUATIONS = 100;
/** The first guess, a secant, keeps this part of the bracket away from its ends. */
const FIRST_MARGIN = 0.01;

/**
 * Root of a continuous function between two points of opposite sign, in the unit of x, by Chandrupatla's
 * hybrid of inverse quadratic interpolation and bisection [chandrupatla1997]; never leaves the bracket.
 * Found when the bracket is no wider than `tolerance` (absolute, in the unit of x) or the function is 0.
 */
export function findRoot(f: (x: number) => number, start: Point, end: Point, tolerance: number): RootResult {
  if (start.y === 0) return { status: 'found', x: start.x, evaluations: 0 };
  if (end.y === 0) return { status: 'found', x: end.x, evaluations: 0 };
  if (!(start.y < 0 !== end.y < 0)) {
    return { status: 'not-bracketed', x: start.x, evaluations: 0 };
  }
  let { x: a, y: fa } = start;
  let { x: b, y: fb } = end;
  let fraction = clamp(fa / (fa - fb), FIRST_MARGIN);
  let evaluations = 0;
  while (evaluations < MOST_EVALUATIONS) {
    const x = a + fraction * (b - a);
    const y = f(x);
    evaluations += 1;
    if (Number.isNaN(y)) break;
    let c = a;
    let fc = fa;
    if (y < 0 !== fa < 0) {
      c = b;
      fc = fb;
      b = a;
      fb = fa;
    }
    a = x;
    fa = y;
    const width = Math.abs(b - a);
    if (y === 0 || width <= tolerance) return { status: 'found', x: nearest(a, fa, b, fb), evaluations };
    fraction = clamp(nextFraction(a, fa, b, fb, c, fc), Math.min(1 / 2, tolerance / width / 2));
  }
  return { status: 'not-converged', x: nearest(a, fa, b, fb), evaluations };
}

function clamp(fraction: number, margin: number): number {
  return Math.min(1 - margin, Math.max(margin, fraction));
}

function nearest(a: number, fa: number, b: number, fb: number): number {
  return Math.abs(fa) < Math.abs(fb) ? a : b;
}

/** Part of the way from a to b: inverse quadratic through a, b, c where that is monotone, else the middle. */
function nextFraction(a: number, fa: number, b: number, fb: number, c: number, fc: number): number {
  const xi = (a - b) / (c - b);
  const phi = (fa - fb) / (fc - fb);
  const isMonotone = phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi;
  if (!isMonotone) return 1 / 2;
  return (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb));
}
