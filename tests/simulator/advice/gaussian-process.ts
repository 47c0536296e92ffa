/**
 * A Gaussian process with a squared-exponential kernel, mean 0, and noise: Rasmussen & Williams 2006, chapter 2
 * (from memory), algorithm 2.1.
 */
export interface Kernel {
  /** Standard deviation of the function. */
  readonly signalSd: number;
  /** Length scale, in the unit of the inputs. */
  readonly length: number;
  /** Standard deviation of one observation around the function. */
  readonly noiseSd: number;
}

/** The function seen at some points. */
export interface Process {
  /** log p(y | inputs), 1. */
  readonly logLikelihood: number;
  /** Mean and standard deviation of the function, noise excluded, at another point. */
  at(point: readonly number[]): { readonly mean: number; readonly sd: number };
}

/** Posterior of a function after noisy observations: k* ᵀ(K + s²I)⁻¹y and k** − k* ᵀ(K + s²I)⁻¹k*. */
export function gaussianProcess(
  points: readonly (readonly number[])[],
  values: readonly number[],
  kernel: Kernel,
): Process {
  const covariance = (a: readonly number[], b: readonly number[]): number =>
    kernel.signalSd ** 2 * Math.exp(-squaredDistance(a, b) / (2 * kernel.length ** 2));
  const lower = cholesky(
    points.map((a, i) => points.map((b, j) => covariance(a, b) + (i === j ? kernel.noiseSd ** 2 : 0))),
  );
  const whitened = forwardSolved(lower, values);
  const logDeterminant = lower.reduce((sum, row, i) => sum + Math.log(row[i] as number), 0);
  return {
    logLikelihood:
      -0.5 * dot(whitened, whitened) - logDeterminant - 0.5 * points.length * Math.log(2 * Math.PI),
    at: (point) => {
      const seen = forwardSolved(
        lower,
        points.map((other) => covariance(point, other)),
      );
      return {
        mean: dot(seen, whitened),
        sd: Math.sqrt(Math.max(0, kernel.signalSd ** 2 - dot(seen, seen))),
      };
    },
  };
}

const squaredDistance = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + (value - (b[i] as number)) ** 2, 0);

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * (b[i] as number), 0);

/** Lower triangle L of a positive definite matrix LLᵀ. */
function cholesky(matrix: readonly (readonly number[])[]): number[][] {
  const lower: number[][] = [];
  for (const [i, row] of matrix.entries()) {
    const made: number[] = [];
    for (let j = 0; j < i; j += 1) {
      const before = lower[j] as number[];
      made.push(((row[j] as number) - dot(made, before)) / (before[j] as number));
    }
    made.push(Math.sqrt((row[i] as number) - dot(made, made)));
    lower.push(made);
  }
  return lower;
}

/** x with Lx = b. */
function forwardSolved(lower: readonly (readonly number[])[], b: readonly number[]): number[] {
  const x: number[] = [];
  for (const [i, row] of lower.entries()) x.push(((b[i] as number) - dot(x, row)) / (row[i] as number));
  return x;
}
