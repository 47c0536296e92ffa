import type { DemandReading } from '@loamledger/evidence';

/** Standard deviations of the model's parts, log metres. */
export interface PartSds {
  mu: number;
  track: number;
  rider: number;
  riderOnTrack: number;
  run: number;
}

/** One rider on one track: the mean of its exact readings and that mean's variance given the level, without the run's. */
interface DenseCell {
  riderId: string;
  trackId: string;
  mean: number;
  count: number;
  readingVariance: number;
}

/** The exact readings of a team by rider and track. */
export function denseCells(readings: readonly DemandReading[]): DenseCell[] {
  const cells = new Map<string, DenseCell>();
  for (const { riderId, trackId, kind, logHeight, readingSd } of readings) {
    if (kind !== 'exact') continue;
    const key = `${riderId}/${trackId}`;
    const cell = cells.get(key) ?? { riderId, trackId, mean: 0, count: 0, readingVariance: readingSd ** 2 };
    cell.count += 1;
    cell.mean += (logHeight - cell.mean) / cell.count;
    cells.set(key, cell);
  }
  return [...cells.values()];
}

/**
 * log density of the cells' means at given standard deviations, as a textbook writes it: the covariance of all cells
 * with one another, its Cholesky factor, −½ log det − ½ yᵀK⁻¹y. No bounds, no posterior, one place of the surface that a
 * fit integrates over.
 */
export function denseLogLikelihood(cells: readonly DenseCell[], muMean: number, sds: PartSds): number {
  const n = cells.length;
  const factor = new Float64Array(n * n);
  const solved = new Float64Array(n);
  let sum = 0;
  for (const [i, row] of cells.entries()) {
    let rest = row.mean - muMean;
    for (let j = 0; j <= i; j++) {
      let value = covariance(row, cells[j] as DenseCell, sds);
      for (let k = 0; k < j; k++) value -= (factor[i * n + k] as number) * (factor[j * n + k] as number);
      factor[i * n + j] = i === j ? Math.sqrt(value) : value / (factor[j * n + j] as number);
      if (j < i) rest -= (factor[i * n + j] as number) * (solved[j] as number);
    }
    const pivot = factor[i * n + i] as number;
    solved[i] = rest / pivot;
    sum -= 0.5 * (rest / pivot) ** 2 + Math.log(pivot) + 0.5 * Math.log(2 * Math.PI);
  }
  return sum;
}

function covariance(a: DenseCell, b: DenseCell, sds: PartSds): number {
  let value = sds.mu ** 2;
  if (a.trackId === b.trackId) value += sds.track ** 2;
  if (a.riderId === b.riderId) value += sds.rider ** 2;
  if (a === b) value += sds.riderOnTrack ** 2 + (sds.run ** 2 + a.readingVariance) / a.count;
  return value;
}
