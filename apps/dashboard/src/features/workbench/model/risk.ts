import type { BikeEnd } from '../api/bike-ends.js';

type RiskCurve = BikeEnd['riskCurve'];

const CERTAIN_PCT = 100;

/**
 * Risk that the hardest hit of a run is higher than `heightM`, %; null without a curve.
 *
 * ln(risk) between the curve's points by a straight line over ln(height). A height below the first point counts as the
 * first, one beyond the last as the last: the curve tells nothing finer there. No height at all is certain to be passed.
 */
export function riskAbove(curve: RiskCurve, heightM: number): number | null {
  const first = curve[0];
  const last = curve.at(-1);
  if (first === undefined || last === undefined) return null;
  if (!(heightM > 0)) return CERTAIN_PCT;
  if (heightM <= first.heightM) return first.riskPct;
  if (heightM >= last.heightM) return last.riskPct;
  const index = curve.findIndex((point) => point.heightM >= heightM);
  const above = curve[index] ?? last;
  const below = curve[index - 1] ?? first;
  const part = Math.log(heightM / below.heightM) / Math.log(above.heightM / below.heightM);
  return below.riskPct * (above.riskPct / below.riskPct) ** part;
}
