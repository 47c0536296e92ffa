/**
 * Normal distribution with full relative accuracy in both tails. Equations: docs/evidence/censored-normal.md.
 */

const SQRT_HALF = Math.SQRT1_2;
const ONE_OVER_SQRT_2PI = 1 / Math.sqrt(2 * Math.PI);
const SQRT_2_OVER_PI = Math.sqrt(2 / Math.PI);
const ONE_OVER_SQRT_PI = 1 / Math.sqrt(Math.PI);

/** Cody's three intervals of the argument (cody1969): below the first erf, between them and beyond erfc. */
const ERF_LIMIT = 0.46875;
const ASYMPTOTIC_LIMIT = 4;
/** Below this argument erfcx overflows a double: 2·exp(26.6²) > 1.8e308. */
const ERFCX_OVERFLOW = -26.6;

/** Coefficients of the rational approximations of cody1969, highest power first where a list says nothing else. */
const ERF_P = [
  1.85777706184603153e-1, 3.1611237438705656, 1.1386415415105016e2, 3.77485237685302021e2,
  3.20937758913846947e3,
];
const ERF_Q = [1, 2.36012909523441209e1, 2.44024637934444173e2, 1.28261652607737228e3, 2.84423683343917062e3];
const ERFC_P = [
  2.15311535474403846e-8, 5.64188496988670089e-1, 8.88314979438837594, 6.61191906371416295e1,
  2.98635138197400131e2, 8.8195222124176909e2, 1.71204761263407058e3, 2.05107837782607147e3,
  1.23033935479799725e3,
];
const ERFC_Q = [
  1, 1.57449261107098347e1, 1.17693950891312499e2, 5.37181101862009858e2, 1.62138957456669019e3,
  3.29079923573345963e3, 4.36261909014324716e3, 3.43936767414372164e3, 1.23033935480374942e3,
];
const TAIL_P = [
  1.63153871373020978e-2, 3.05326634961232344e-1, 3.60344899949804439e-1, 1.25781726111229246e-1,
  1.60837851487422766e-2, 6.58749161529837803e-4,
];
const TAIL_Q = [
  1, 2.56852019228982242, 1.87295284992346725, 5.27905102951428412e-1, 6.05183413124413191e-2,
  2.33520497626869185e-3,
];

function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let i = 0; i < coefficients.length; i += 1) sum = sum * x + (coefficients[i] as number);
  return sum;
}

/**
 * Scaled complementary error function, exp(x²)·erfc(x), dimensionless.
 *
 * Rational minimax approximations on three intervals (cody1969). Valid for every real x; +Infinity below
 * −26.6, where the value leaves the range of a double. NaN gives NaN.
 */
export function erfcx(x: number): number {
  const y = Math.abs(x);
  if (y <= ERF_LIMIT) {
    const square = y * y;
    const erf = (x * polynomial(ERF_P, square)) / polynomial(ERF_Q, square);
    return Math.exp(square) * (1 - erf);
  }
  let scaled: number;
  if (y <= ASYMPTOTIC_LIMIT) {
    scaled = polynomial(ERFC_P, y) / polynomial(ERFC_Q, y);
  } else {
    const inverseSquare = 1 / (y * y);
    const correction =
      (inverseSquare * polynomial(TAIL_P, inverseSquare)) / polynomial(TAIL_Q, inverseSquare);
    scaled = (ONE_OVER_SQRT_PI - correction) / y;
  }
  if (x >= 0) return scaled;
  return x < ERFCX_OVERFLOW ? Number.POSITIVE_INFINITY : 2 * Math.exp(y * y) - scaled;
}

/**
 * Probability that a standard normal variable is above z, dimensionless.
 *
 * Q(z) = ½ exp(−z²/2) erfcx(z/√2) for z ≥ 0 and 1 − Q(−z) below, so the upper tail keeps its relative accuracy.
 * Valid for every z; ±Infinity give 0 and 1. Source: cody1969.
 */
export function normalUpperTail(z: number): number {
  if (z < 0) return 1 - normalUpperTail(-z);
  if (z === Number.POSITIVE_INFINITY) return 0;
  return 0.5 * Math.exp(-0.5 * z * z) * erfcx(z * SQRT_HALF);
}

/** log Φ(z) with its first derivative and the negative of its second, all dimensionless. */
export interface LogNormalCdf {
  value: number;
  /** λ = φ(z)/Φ(z), > 0. */
  slope: number;
  /** λ(λ + z), between 0 and 1: log Φ is concave. */
  curvature: number;
}

/** Beyond this z the density is below the smallest double that changes log Φ, and λ is 0 in effect. */
const CERTAIN = 38;
/** Below −this z, λ(λ+z) loses all digits; the asymptotic 1 − 1/z² is then exact to 1e-15 (relative error 6/z⁴). */
const REMOTE = 1e4;

/**
 * λ(z) = φ(z)/Φ(z), dimensionless, > 0: the first derivative of log Φ alone, without its logarithm.
 *
 * λ = √(2/π)/erfcx(−z/√2) below 0, φ/(1 − Q) above. Valid for every finite z. Source of erfcx: cody1969.
 */
export function slopeOfLogNormalCdf(z: number): number {
  if (z > CERTAIN) return 0;
  if (z <= 0) return SQRT_2_OVER_PI / erfcx(-z * SQRT_HALF);
  const bell = Math.exp(-0.5 * z * z);
  return (bell * ONE_OVER_SQRT_2PI) / (1 - 0.5 * bell * erfcx(z * SQRT_HALF));
}

/** −(log Φ)″ = λ(λ + z) from z and λ(z), between 0 and 1, dimensionless. */
export const curvatureOfLogNormalCdf = (z: number, slope: number): number =>
  z < -REMOTE ? 1 - 1 / (z * z) : slope * (slope + z);

/** log Φ(z) alone, dimensionless; as logNormalCdf. */
export function valueOfLogNormalCdf(z: number): number {
  if (z > CERTAIN) return 0;
  if (z > 0) return Math.log1p(-normalUpperTail(z));
  return Math.log(0.5 * erfcx(-z * SQRT_HALF)) - 0.5 * z * z;
}

/**
 * Logarithm of the standard normal distribution function with its derivatives, dimensionless.
 *
 * log Φ(z) = log(½ erfcx(−z/√2)) − z²/2;  λ = √(2/π)/erfcx(−z/√2);  −(log Φ)″ = λ(λ + z).
 * z: standardised distance of the linear predictor from the limit, positive inside the allowed side.
 * Valid for every finite z. This is the contribution of one censored reading (tobin1958), source of erfcx cody1969.
 */
export function logNormalCdf(z: number): LogNormalCdf {
  const slope = slopeOfLogNormalCdf(z);
  return { value: valueOfLogNormalCdf(z), slope, curvature: curvatureOfLogNormalCdf(z, slope) };
}
