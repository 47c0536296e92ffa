import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { choleskyInPlace, inverseFromCholesky } from './cholesky.js';

const SIZE = 5;

/** G Gᵀ + I of a matrix of small numbers: well conditioned, so that rounding stays below 1e-9. */
const matrices = fc
  .array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: SIZE * SIZE, maxLength: SIZE * SIZE })
  .map((g) => {
    const at = (i: number, j: number): number => g[i * SIZE + j] as number;
    return Float64Array.from({ length: SIZE * SIZE }, (_, k) => {
      const [i, j] = [Math.floor(k / SIZE), k % SIZE];
      let sum = i === j ? 1 : 0;
      for (let l = 0; l < SIZE; l += 1) sum += at(i, l) * at(j, l);
      return sum;
    });
  });

describe('Cholesky factor', () => {
  it('gives an inverse that multiplies back to the identity', () => {
    fc.assert(
      fc.property(matrices, (a) => {
        const factor = a.slice();
        choleskyInPlace(factor, SIZE);
        const inverse = inverseFromCholesky(factor, SIZE);
        for (let i = 0; i < SIZE; i += 1) {
          for (let j = 0; j < SIZE; j += 1) {
            let sum = 0;
            for (let k = 0; k < SIZE; k += 1)
              sum += (a[i * SIZE + k] as number) * (inverse[k * SIZE + j] as number);
            expect(sum).toBeCloseTo(i === j ? 1 : 0, 9);
          }
        }
      }),
    );
  });

  it('gives the log determinant of a diagonal matrix, and NaN for one that is not positive definite', () => {
    expect(choleskyInPlace(Float64Array.of(2, 0, 0, 8), 2)).toBeCloseTo(Math.log(16), 14);
    expect(choleskyInPlace(Float64Array.of(1, 2, 2, 1), 2)).toBeNaN();
  });
});
