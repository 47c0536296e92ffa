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
  let fraction = secantFraction(fa, fb);
  for (let evaluations = 1; evaluations <= MOST_EVALUATIONS; evaluations++) {
    const x = a + fraction * (b - a);
    const y = f(x);
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
    const best = Math.abs(fa) < Math.abs(fb) ? a : b;
    const width = Math.abs(b - a);
    if (y === 0 || width <= tolerance) return { status: 'found', x: best, evaluations };
    if (Number.isNaN(y)) break;
    const margin = Math.min(0.5, (0.5 * tolerance) / width);
    fraction = Math.min(1 - margin, Math.max(margin, nextFraction(a, fa, b, fb, c, fc)));
  }
  return { status: 'not-converged', x: b, evaluations: MOST_EVALUATIONS };
}

/** First guess between the ends: the secant, kept away from them. */
function secantFraction(fa: number, fb: number): number {
  return Math.min(0.99, Math.max(0.01, fa / (fa - fb)));
}

/** Part of the way from a to b: inverse quadratic through a, b, c where that is monotone, else the middle. */
function nextFraction(a: number, fa: number, b: number, fb: number, c: number, fc: number): number {
  const xi = (a - b) / (c - b);
  const phi = (fa - fb) / (fc - fb);
  const isMonotone = phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi;
  if (!isMonotone) return 0.5;
  return (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb));
}
