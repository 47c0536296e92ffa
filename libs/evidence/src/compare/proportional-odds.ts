import { choleskyInPlace, inverseFromCholesky } from '../numerics/cholesky.js';

/** Answers alike in everything, counted. */
export interface OrdinalRow {
  /** Place of the answer on its scale, from 0. */
  readonly level: number;
  /** Covariates; the same number in every row. */
  readonly x: readonly number[];
  /** How often it was given, ≥ 0. */
  readonly count: number;
}

/** A fitted model, log odds. */
export interface ProportionalOdds {
  readonly status: 'fitted';
  /** One fewer than levels, rising. */
  readonly thresholds: number[];
  readonly effects: number[];
  /** Standard errors of thresholds and effects, from the observed information. */
  readonly thresholdSes: number[];
  readonly effectSes: number[];
  readonly logLikelihood: number;
}

/** Why there is none: fewer than two levels; effects that run off to infinity; a covariate that says nothing of its own. */
interface NotFitted {
  readonly status: 'one level' | 'separated' | 'not identified';
}

const NEWTON_STEPS = 60;
const HALVINGS = 40;
/** Log likelihood that a Newton step could still gain: below this, parameters are exact to rounding. */
const TOLERANCE = 1e-18;
/** So near the top a whole step is right, while the gain is lost in the rounding of the likelihood. */
const QUADRATIC = 1e-6;
/** Share of a parameter's information that the others must leave it. */
const SINGULAR = 1e-10;
/** A log odds ratio beyond this is not told from infinity by any ratings of a season: e¹⁵ is three million. */
const RUNAWAY = 15;

/**
 * Proportional odds, logit P(Y ≤ k) = ζₖ − xᵀβ, by maximum likelihood (mccullagh1980); log odds, dimensionless.
 *
 * Newton's method with the observed information and halved steps; the log likelihood is concave in (ζ, β). Levels that
 * nobody answered are left out, so that thresholds are between levels in use. Positive effects go with higher answers.
 */
export function proportionalOdds(rows: readonly OrdinalRow[]): ProportionalOdds | NotFitted {
  const used = [...new Set(rows.filter(({ count }) => count > 0).map(({ level }) => level))].sort(
    (a, b) => a - b,
  );
  if (used.length < 2) return { status: 'one level' };
  const data = rows.flatMap((row) => (row.count > 0 ? [{ ...row, level: used.indexOf(row.level) }] : []));
  const cuts = used.length - 1;
  const effects = data[0]?.x.length ?? 0;
  let parameters = startOf(data, cuts, effects);
  for (let step = 0; step < NEWTON_STEPS; step += 1) {
    const { value, gradient, information } = likelihood(data, parameters, cuts);
    const inverse = inverseOf(information, parameters.length);
    if (inverse === null) return { status: 'not identified' };
    const move = parameters.map((_, i) =>
      gradient.reduce((sum, slope, j) => sum + (inverse[i * parameters.length + j] as number) * slope, 0),
    );
    const gain = move.reduce((sum, part, i) => sum + part * (gradient[i] as number), 0) / 2;
    if (gain < TOLERANCE) return fitted(parameters, inverse, cuts, value);
    const next = gain < QUADRATIC ? along(parameters, move, 1) : halved(data, parameters, move, cuts, value);
    if (next === null) return fitted(parameters, inverse, cuts, value);
    parameters = next;
    if (parameters.slice(cuts).some((effect) => Math.abs(effect) > RUNAWAY)) return { status: 'separated' };
  }
  return { status: 'separated' };
}

/** null where the information is singular but for rounding: some parameters say the same. */
function inverseOf(information: Float64Array, size: number): Float64Array | null {
  const factor = information.slice();
  if (Number.isNaN(choleskyInPlace(factor, size))) return null;
  for (let i = 0; i < size; i += 1) {
    const at = i * size + i;
    if ((factor[at] as number) ** 2 < SINGULAR * (information[at] as number)) return null;
  }
  return inverseFromCholesky(factor, size);
}

/** Thresholds of the shares of all answers, no effects. */
function startOf(data: readonly OrdinalRow[], cuts: number, effects: number): number[] {
  const total = data.reduce((sum, { count }) => sum + count, 0);
  const thresholds = Array.from({ length: cuts }, (_, cut) => {
    const below = data.reduce((sum, { level, count }) => sum + (level <= cut ? count : 0), 0);
    return Math.log(below / (total - below));
  });
  return [...thresholds, ...new Array<number>(effects).fill(0)];
}

const along = (from: readonly number[], move: readonly number[], share: number): number[] =>
  from.map((parameter, i) => parameter + share * (move[i] as number));

/** The longest of the step and its halves that does not lose; null where rounding leaves nothing to gain. */
function halved(
  data: readonly OrdinalRow[],
  from: readonly number[],
  move: readonly number[],
  cuts: number,
  value: number,
): number[] | null {
  let share = 1;
  for (let i = 0; i < HALVINGS; i += 1, share /= 2) {
    const next = along(from, move, share);
    if (likelihood(data, next, cuts).value > value) return next;
  }
  return null;
}

const logistic = (z: number): number => (z >= 0 ? 1 / (1 + Math.exp(-z)) : Math.exp(z) / (1 + Math.exp(z)));

/** Log likelihood with its gradient and observed information; −∞ where thresholds do not rise. */
function likelihood(data: readonly OrdinalRow[], parameters: readonly number[], cuts: number) {
  const size = parameters.length;
  const gradient = new Array<number>(size).fill(0);
  const information = new Float64Array(size * size);
  let value = 0;
  for (const { level, x, count } of data) {
    const eta = x.reduce((sum, xi, i) => sum + xi * (parameters[cuts + i] as number), 0);
    // The row's probability is F(u) − F(v); F is 1 above the last threshold and 0 below the first.
    const u = level < cuts ? (parameters[level] as number) - eta : Number.POSITIVE_INFINITY;
    const v = level > 0 ? (parameters[level - 1] as number) - eta : Number.NEGATIVE_INFINITY;
    const [fu, fv] = [logistic(u), logistic(v)];
    const probability = fu - fv;
    if (!(probability > 0)) return { value: Number.NEGATIVE_INFINITY, gradient, information };
    value += count * Math.log(probability);
    const [du, dv] = [fu * (1 - fu), fv * (1 - fv)];
    const slopes = slopesOf(level, x, cuts, size);
    const first = slopes.map(([su, sv]) => du * su - dv * sv);
    const [ddu, ddv] = [du * (1 - 2 * fu), dv * (1 - 2 * fv)];
    for (let i = 0; i < size; i += 1) {
      gradient[i] = (gradient[i] as number) + (count * (first[i] as number)) / probability;
      for (let j = 0; j <= i; j += 1) {
        const [iu, iv] = slopes[i] as Slope;
        const [ju, jv] = slopes[j] as Slope;
        const second = ddu * iu * ju - ddv * iv * jv;
        const outer = ((first[i] as number) * (first[j] as number)) / probability;
        information[i * size + j] =
          (information[i * size + j] as number) + (count * (outer - second)) / probability;
      }
    }
  }
  return { value, gradient, information };
}

/** Derivatives of the upper and the lower end of a row by a parameter. */
type Slope = readonly [upper: number, lower: number];

const slopesOf = (level: number, x: readonly number[], cuts: number, size: number): Slope[] =>
  Array.from({ length: size }, (_, i) =>
    i < cuts
      ? [i === level ? 1 : 0, i === level - 1 ? 1 : 0]
      : [-(x[i - cuts] as number), -(x[i - cuts] as number)],
  );

function fitted(
  parameters: readonly number[],
  inverse: Float64Array,
  cuts: number,
  value: number,
): ProportionalOdds {
  const ses = parameters.map((_, i) => Math.sqrt(inverse[i * parameters.length + i] as number));
  return {
    status: 'fitted',
    thresholds: parameters.slice(0, cuts),
    effects: parameters.slice(cuts),
    thresholdSes: ses.slice(0, cuts),
    effectSes: ses.slice(cuts),
    logLikelihood: value,
  };
}
