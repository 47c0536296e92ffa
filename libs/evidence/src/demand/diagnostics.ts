import { normalUpperTail } from '../numerics/normal.js';
import { mixtureOf, NO_TRACK } from './component.js';
import type { DemandFit } from './fit.js';
import { mixtureUpperTail } from './mixture.js';
import type { DemandReading } from './reading.js';
import { unknownsOfRun } from './run-unknowns.js';

/** How one reading sits in a fit; logs of metres. */
export interface ReadingDiagnosis {
  /** Number of the reading in the list given. */
  index: number;
  kind: DemandReading['kind'];
  /**
   * Exact reading: two-sided chance of one at least as far out, foretold from the other readings. Bound: chance that a
   * reading of this rider on this track would have met it, foretold from all.
   */
  chance: number;
  /** How far the reading moves the level of its rider on its track; null for a bound. */
  pull: number | null;
}

/** Chance below which a reading deserves a second look at ring, tape and notebook (judgement). */
export const SURPRISING = 0.01;

/**
 * What each reading of a fit does, most surprising first.
 *
 * Exact readings are taken out of each part of the posterior mixture (their weight 1/(run² + reading²) on the level of
 * their cell), and the parts weighed anew by 1/p(reading | rest): leave one out without a refit, exact for the fit's
 * own mixture (docs/evidence/demand.md, D11). `readings` are those that the fit was made from.
 */
export function diagnoseDemand(readings: readonly DemandReading[], fit: DemandFit): ReadingDiagnosis[] {
  return readings
    .map((reading, index) =>
      reading.kind === 'exact' ? exactDiagnosis(reading, index, fit) : boundDiagnosis(reading, index, fit),
    )
    .sort((a, b) => a.chance - b.chance || a.index - b.index);
}

function exactDiagnosis(reading: DemandReading, index: number, fit: DemandFit): ReadingDiagnosis {
  const level = mixtureOf(fit.components, { ...unknownsOfRun(fit, reading), track: NO_TRACK }, () => 0);
  const y = reading.logHeight;
  let total = 0;
  let rest = 0;
  let above = 0;
  let withReading = 0;
  for (const [k, component] of fit.components.entries()) {
    const mean = level.means[k] as number;
    const variance = (level.sds[k] as number) ** 2;
    const noise = component.variances.run + reading.readingSd ** 2;
    const restVariance = 1 / Math.max(1 / variance - 1 / noise, SMALLEST_PRECISION);
    const restMean = restVariance * (mean / variance - y / noise);
    const sd = Math.sqrt(restVariance + noise);
    const z = (y - restMean) / sd;
    const weight = component.weight * sd * Math.exp(0.5 * z * z);
    total += weight;
    rest += weight * restMean;
    above += weight * normalUpperTail(z);
    withReading += component.weight * mean;
  }
  const tail = above / total;
  return {
    index,
    kind: reading.kind,
    chance: 2 * Math.min(tail, 1 - tail),
    pull: withReading - rest / total,
  };
}

/** The merged parts of a stored mixture may leave a reading more precision than its cell; the prior's share is then all there is. */
const SMALLEST_PRECISION = 1e-2;

function boundDiagnosis(reading: DemandReading, index: number, fit: DemandFit): ReadingDiagnosis {
  const noise = reading.readingSd ** 2;
  const run = unknownsOfRun(fit, reading);
  const readings = mixtureOf(fit.components, run, ({ variances }) => variances.run + noise);
  const above = mixtureUpperTail(readings, reading.logHeight);
  return { index, kind: reading.kind, chance: reading.kind === 'at-least' ? above : 1 - above, pull: null };
}
