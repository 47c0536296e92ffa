import { exceedance } from '@loamledger/evidence';

/**
 * Expected improvement of a normal variable below the best value so far, in the unit of the values:
 * (f − m)·Φ(z) + s·φ(z), z = (f − m)/s (Jones, Schonlau & Welch 1998, from memory).
 */
export function expectedImprovement({ mean, sd }: { mean: number; sd: number }, best: number): number {
  if (sd === 0) return Math.max(0, best - mean);
  const z = (best - mean) / sd;
  return (best - mean) * normalCdf(z) + sd * normalDensity(z);
}

const normalDensity = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
const normalCdf = (z: number): number => exceedance({ weights: [1], means: [0], sds: [1] }, -z);
