import type { BaselineRequest, EvaluatedCandidate } from './candidate.js';

/** What a set-up inside the unit's limits must still meet. */
export type DemandOnSetUp = 'sag band' | 'risk' | 'dive';

const DEMANDS_ON_SET_UP: readonly DemandOnSetUp[] = ['sag band', 'risk', 'dive'];

/** Demands without which nothing is recommended. Dive only chooses among what meets them. */
export const STRICT_DEMANDS: readonly DemandOnSetUp[] = ['sag band', 'risk'];

/** Whether a candidate meets one demand; a dive that is not asked for or not known counts as met. */
export function meets(
  demand: DemandOnSetUp,
  candidate: EvaluatedCandidate,
  request: BaselineRequest,
): boolean {
  const { sagBand, acceptedRisk, allowedDive } = request;
  switch (demand) {
    case 'sag band':
      return candidate.sagFraction >= sagBand.min && candidate.sagFraction <= sagBand.max;
    case 'risk':
      return candidate.risk <= acceptedRisk;
    case 'dive':
      return (
        allowedDive === undefined || candidate.diveTravel === undefined || candidate.diveTravel <= allowedDive
      );
  }
}

/** The demands that a candidate does not meet. */
export const brokenDemands = (candidate: EvaluatedCandidate, request: BaselineRequest): DemandOnSetUp[] =>
  DEMANDS_ON_SET_UP.filter((demand) => !meets(demand, candidate, request));

export const meetsStrict = (candidate: EvaluatedCandidate, request: BaselineRequest): boolean =>
  STRICT_DEMANDS.every((demand) => meets(demand, candidate, request));

/** Keeps a ratio of risks finite; one run in a million is less than any team rides. */
const SMALLEST_RISK = 1e-6;

/**
 * How far a candidate is from meeting the strict demands, dimensionless; 0 where it meets them. Unlike quantities are
 * made comparable by what is allowed: sag in widths of its band, risk as the log of its ratio to the accepted one.
 */
export function shortfall(candidate: EvaluatedCandidate, request: BaselineRequest): number {
  const { sagBand, acceptedRisk } = request;
  const outside = Math.max(0, sagBand.min - candidate.sagFraction, candidate.sagFraction - sagBand.max);
  const risk = Math.max(0, Math.log((candidate.risk + SMALLEST_RISK) / (acceptedRisk + SMALLEST_RISK)));
  return relative(outside, sagBand.max - sagBand.min) + risk;
}

/** A band of no width cannot measure a distance; the excess then counts as it is. */
const relative = (excess: number, width: number): number => (width > 0 ? excess / width : excess);
