import { exceedance, predictDemand, predictiveQuantile, type DemandFit } from '@loamledger/evidence';
import type { RiskPointDto } from './ends.dto.js';

const PER_CENT = 100;
const POINTS = 200;
/** From a hit that all but one run in a thousand exceed to one that hardly any does. */
const LOWEST = 0.001;
const HIGHEST = 0.9999;

/** Risk that the biggest hit of the rider's next run on the track is higher, over heights evenly spaced by ratio. */
export function riskCurve(fit: DemandFit, who: { riderId: string; trackId: string }): RiskPointDto[] {
  const predictive = predictDemand(fit, who);
  const low = predictiveQuantile(predictive, LOWEST);
  const high = predictiveQuantile(predictive, HIGHEST);
  return Array.from({ length: POINTS }, (_, i) => {
    const logHeight = low + ((high - low) * i) / (POINTS - 1);
    return { heightM: Math.exp(logHeight), riskPct: PER_CENT * exceedance(predictive, logHeight) };
  });
}
