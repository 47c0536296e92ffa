import { entry } from './entry.js';
import { invertDefinite } from './symmetric-matrix.js';

/** A nonlinear least-squares problem: residuals already divided by their standard uncertainties. */
export interface LeastSquaresProblem {
  readonly start: readonly number[];
  /** A small change of each parameter, for the differences that give the derivatives. */
  readonly steps: readonly number[];
  /** Measurements and, for parameters known beforehand, (parameter − known value)/its uncertainty. */
  residuals(parameters: readonly number[]): readonly number[];
}

export type LeastSquaresResult =
  | {
      readonly status: 'found';
      readonly parameters: readonly number[];
      readonly covariance: readonly (readonly number[])[];
      readonly residuals: readonly number[];
      /** Sensitivity of each parameter to each residual: parameter = … + gain·residual. */
      readonly gains: readonly (readonly number[])[];
      readonly iterations: number;
    }
  | { readonly status: 'singular' | 'not-converged'; readonly iterations: number };

const MOST_ITERATIONS = 50;
const MOST_HALVINGS = 20;
/** A step that moves no parameter by more than this part of its standard uncertainty ends the search. */
const CONVERGED = 1e-6;

/**
 * Gauss–Newton search with halved steps; covariance (JᵀJ)⁻¹ at the end, which is exact for straight models and right to
 * first order otherwise: docs/equations/numerics.md#least-squares.
 */
export function leastSquares(problem: LeastSquaresProblem): LeastSquaresResult {
  let parameters = problem.start;
  let residuals = problem.residuals(parameters);
  for (let iterations = 1; iterations <= MOST_ITERATIONS; iterations++) {
    const jacobian = differences(problem, parameters);
    const covariance = invertDefinite(products(jacobian));
    if (covariance === undefined) return { status: 'singular', iterations };
    const gains = covariance.map((row) =>
      residuals.map((_, k) => -sum(row.map((c, j) => c * entry(entry(jacobian, j), k)))),
    );
    const step = gains.map((row) => sum(row.map((g, k) => g * entry(residuals, k))));
    const isSmall = step.every(
      (d, i) => Math.abs(d) <= CONVERGED * Math.sqrt(entry(entry(covariance, i), i)),
    );
    if (isSmall) return { status: 'found', parameters, covariance, residuals, gains, iterations };
    const next = descend(problem, parameters, residuals, step);
    if (next === undefined) return { status: 'found', parameters, covariance, residuals, gains, iterations };
    parameters = next.parameters;
    residuals = next.residuals;
  }
  return { status: 'not-converged', iterations: MOST_ITERATIONS };
}

/** Moves along `step`, halved until the sum of squares falls; undefined where it no longer does. */
function descend(
  problem: LeastSquaresProblem,
  parameters: readonly number[],
  residuals: readonly number[],
  step: readonly number[],
): { parameters: readonly number[]; residuals: readonly number[] } | undefined {
  const before = sum(residuals.map((r) => r * r));
  for (let i = 0, factor = 1; i < MOST_HALVINGS; i++, factor /= 2) {
    const moved = parameters.map((p, j) => p + factor * entry(step, j));
    const after = problem.residuals(moved);
    if (sum(after.map((r) => r * r)) < before) return { parameters: moved, residuals: after };
  }
  return undefined;
}

/** Derivatives of the residuals by central differences, one list a parameter. */
function differences(problem: LeastSquaresProblem, parameters: readonly number[]): number[][] {
  return parameters.map((_, j) => {
    const step = entry(problem.steps, j);
    const shifted = (by: number) => parameters.map((p, i) => (i === j ? p + by : p));
    const above = problem.residuals(shifted(step));
    const below = problem.residuals(shifted(-step));
    return above.map((r, k) => (r - entry(below, k)) / (2 * step));
  });
}

function products(jacobian: readonly (readonly number[])[]): number[][] {
  return jacobian.map((a) => jacobian.map((b) => sum(a.map((x, k) => x * entry(b, k)))));
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
