import { dot, form, product, times } from '../numerics/matrix.js';
import { contrast } from './least-squares.js';
import type { MixedModel } from './mixed-model.js';
import { throughCells } from './random-cells.js';

/** A contrast of fixed terms: estimate and standard error in y's unit, and the degrees of freedom of their t. */
interface MixedContrast {
  readonly estimate: number;
  readonly se: number;
  readonly df: number;
}

/** Contrasts of a mixed model and how their estimates vary together. */
export interface MixedContrasts {
  readonly contrasts: readonly MixedContrast[];
  /** Adjusted covariances. */
  readonly covariance: readonly (readonly number[])[];
  /** Degrees of freedom of the variance of rows. */
  readonly rowDf: number;
}

/** Covariance of the estimates of the two variances (cells, rows). */
interface VarianceCovariance {
  readonly cells: number;
  readonly both: number;
  readonly rows: number;
}

/**
 * Generalised least squares contrasts of fixed terms with the standard errors and degrees of freedom of kenward1997.
 *
 * Covariance Φ + 2 Σ Wᵢⱼ wᵀ(dVᵢ P dVⱼ)w, W the inverse of the expected information of both variances, also where one of
 * them is estimated as 0; for single contrasts their F is t with 2Φ²/(gᵀWg) degrees of freedom, g the slopes of Φ.
 * weights: one list a contrast, over the columns of X.
 */
export function kenwardRoger(model: MixedModel, weights: readonly (readonly number[])[]): MixedContrasts {
  const { system, fit, ratio, at, rowVariance } = model;
  const { cells, s, xz } = system;
  const { e } = at;
  const se = product(s, e, cells);
  const w = varianceCovariance(model, se);
  const fitted = weights.map((c) => {
    const own = contrast(fit, c);
    const carried = fit.inverse.map((row) => row.reduce((sum, value, j) => sum + value * (c[j] ?? 0), 0));
    const a = throughCells(xz, carried, cells);
    // Sums over cells of the weights that the estimate gives to rows.
    const z = times(e, a);
    const inCells = z.reduce((sum, value) => sum + value * value, 0);
    const overRows = own.unscaledVariance + ratio ** 2 * form(s, z, z);
    const variance = rowVariance * (own.unscaledVariance + ratio * dot(a, z));
    const spread = inCells ** 2 * w.cells + 2 * inCells * overRows * w.both + overRows ** 2 * w.rows;
    return {
      weights: carried,
      a,
      z,
      estimate: own.estimate - ratio * dot(z, system.u),
      df: (2 * variance ** 2) / spread,
    };
  });
  const spreadOfRatio = w.cells - 2 * ratio * w.both + ratio ** 2 * w.rows;
  const covariance = fitted.map((one) =>
    fitted.map((other, j) => {
      const c = weights[j] as readonly number[];
      const unscaled = one.weights.reduce((sum, value, k) => sum + value * (c[k] ?? 0), 0);
      const plain = rowVariance * (unscaled + ratio * dot(one.a, other.z));
      return plain + (2 * form(se, one.z, other.z) * spreadOfRatio) / rowVariance;
    }),
  );
  return {
    contrasts: fitted.map(({ estimate, df }, i) => ({
      estimate,
      se: Math.sqrt(covariance[i]?.[i] as number),
      df,
    })),
    covariance,
    rowDf: (2 * rowVariance ** 2) / w.rows,
  };
}

/** Inverse of ½ tr(P dVᵢ P dVⱼ); the traces in terms of S and E, `se` their product. */
function varianceCovariance(
  { system, at, rowVariance, variances }: MixedModel,
  se: Float64Array,
): VarianceCovariance {
  const { cells, df } = system;
  const { e } = at;
  let ofCells = 0;
  let ofBoth = 0;
  let ofRows = df - cells;
  for (let i = 0; i < cells; i += 1) {
    for (let j = 0; j < cells; j += 1) {
      const [here, there] = [i * cells + j, j * cells + i];
      ofCells += (se[here] as number) * (se[there] as number);
      ofBoth += (se[here] as number) * (e[there] as number);
      ofRows += (e[here] as number) ** 2;
    }
  }
  const scale = 2 * rowVariance ** 2;
  if (variances === 'one') return { cells: 0, both: 0, rows: scale / ofRows };
  const determinant = ofCells * ofRows - ofBoth ** 2;
  return {
    cells: (scale * ofRows) / determinant,
    both: (-scale * ofBoth) / determinant,
    rows: (scale * ofCells) / determinant,
  };
}
