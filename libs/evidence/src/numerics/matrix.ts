/** Square matrices are row-major Float64Arrays. */

/** Sum of the products of two vectors' elements. */
export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

/** aᵀ M b. */
export function form(matrix: Float64Array, a: Float64Array, b: Float64Array): number {
  const n = a.length;
  let sum = 0;
  for (let i = 0; i < n; i += 1) {
    const left = a[i] as number;
    if (left === 0) continue;
    let row = 0;
    for (let j = 0; j < n; j += 1) row += (matrix[i * n + j] as number) * (b[j] as number);
    sum += left * row;
  }
  return sum;
}

/** Product of two n × n matrices. */
export function product(a: Float64Array, b: Float64Array, n: number): Float64Array {
  const out = new Float64Array(n * n);
  for (let i = 0; i < n; i += 1) {
    for (let k = 0; k < n; k += 1) {
      const left = a[i * n + k] as number;
      if (left === 0) continue;
      for (let j = 0; j < n; j += 1) {
        out[i * n + j] = (out[i * n + j] as number) + left * (b[k * n + j] as number);
      }
    }
  }
  return out;
}

/** Matrix times vector. */
export function times(matrix: Float64Array, vector: Float64Array): Float64Array {
  const n = vector.length;
  return Float64Array.from({ length: n }, (_, i) => {
    let sum = 0;
    for (let j = 0; j < n; j += 1) sum += (matrix[i * n + j] as number) * (vector[j] as number);
    return sum;
  });
}
