/** Square matrices are row-major Float64Arrays; only the lower triangle of a symmetric matrix is read. */

/**
 * Replaces the lower triangle of a symmetric positive definite n × n matrix by its Cholesky factor L, A = L Lᵀ.
 * Returns log det A, or NaN when the matrix is not positive definite (the caller reports it as a status).
 */
export function choleskyInPlace(a: Float64Array, n: number): number {
  let logDeterminant = 0;
  for (let j = 0; j < n; j += 1) {
    const rowJ = j * n;
    let pivot = a[rowJ + j] as number;
    for (let k = 0; k < j; k += 1) pivot -= (a[rowJ + k] as number) ** 2;
    if (!(pivot > 0)) return Number.NaN;
    const root = Math.sqrt(pivot);
    a[rowJ + j] = root;
    logDeterminant += 2 * Math.log(root);
    for (let i = j + 1; i < n; i += 1) {
      const rowI = i * n;
      let sum = a[rowI + j] as number;
      for (let k = 0; k < j; k += 1) sum -= (a[rowI + k] as number) * (a[rowJ + k] as number);
      a[rowI + j] = sum / root;
    }
  }
  return logDeterminant;
}

/**
 * Inverse of L Lᵀ from its Cholesky factor, as a full symmetric n × n matrix.
 * Cost n³/2: L⁻¹ by forward substitution, then (L⁻¹)ᵀ L⁻¹.
 */
export function inverseFromCholesky(l: Float64Array, n: number): Float64Array {
  const inverse = new Float64Array(n * n);
  invertInto(inverse, new Float64Array(n * n), l, n);
  return inverse;
}

/** As inverseFromCholesky, into `inverse`, with `columns` as working space; both n × n. */
export function invertInto(inverse: Float64Array, columns: Float64Array, l: Float64Array, n: number): void {
  // Row j of `columns` holds column j of L⁻¹, so that both inner loops run along memory.
  for (let j = 0; j < n; j += 1) {
    const column = j * n;
    columns[column + j] = 1 / (l[j * n + j] as number);
    for (let i = j + 1; i < n; i += 1) {
      const row = i * n;
      let sum = 0;
      for (let k = j; k < i; k += 1) sum -= (l[row + k] as number) * (columns[column + k] as number);
      columns[column + i] = sum / (l[row + i] as number);
    }
  }
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = 0;
      for (let k = i; k < n; k += 1) sum += (columns[i * n + k] as number) * (columns[j * n + k] as number);
      inverse[i * n + j] = sum;
      inverse[j * n + i] = sum;
    }
  }
}
