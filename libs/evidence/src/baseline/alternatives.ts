import type { BaselineRequest, EvaluatedCandidate } from './candidate.js';
import { brokenDemands, type DemandOnSetUp } from './demands.js';
import { nearest } from './nearest.js';

/** A neighbour of the chosen set-up inside the unit's limits, with what it costs. */
export interface BaselineAlternative {
  kind: 'softer' | 'firmer' | 'fewer spacers' | 'more spacers';
  candidate: EvaluatedCandidate;
  /** Alternative minus chosen. */
  cost: {
    risk: number;
    reserveAt95: number;
    sagFraction: number;
    earlyForce: number;
    /** Where the travel under braking is known of both. */
    diveTravel?: number;
  };
  /** Demands that it would not meet. */
  breaks: DemandOnSetUp[];
}

/** Least change of pressure called softer or firmer, Pa: 2 psi, twice a hand gauge's error (common practice, no source). */
const NOTICEABLE_PRESSURE_PA = 13_790;

/**
 * Up to four alternatives: the same spacers with noticeably less or more pressure, and one spacer fewer with more
 * pressure or one more with less, each the one whose reserve (m) at the 95th-percentile hit is nearest to the
 * chosen one's. `candidates` are inside the limits.
 */
export function alternativesTo(
  chosen: EvaluatedCandidate,
  candidates: readonly EvaluatedCandidate[],
  request: BaselineRequest,
): BaselineAlternative[] {
  const byPressure = (candidate: EvaluatedCandidate): number =>
    Math.abs(candidate.pressurePa - chosen.pressurePa);
  const byReserve = (candidate: EvaluatedCandidate): number =>
    Math.abs(candidate.reserveAt95 - chosen.reserveAt95);
  const at = (spacers: number, from: number, to: number): EvaluatedCandidate[] =>
    candidates.filter(
      (candidate) =>
        candidate.spacers === spacers && candidate.pressurePa >= from && candidate.pressurePa <= to,
    );
  const { pressurePa, spacers } = chosen;
  const found: [BaselineAlternative['kind'], EvaluatedCandidate | undefined][] = [
    ['softer', nearest(at(spacers, 0, pressurePa - NOTICEABLE_PRESSURE_PA), byPressure)],
    [
      'firmer',
      nearest(at(spacers, pressurePa + NOTICEABLE_PRESSURE_PA, Number.POSITIVE_INFINITY), byPressure),
    ],
    ['fewer spacers', nearest(at(spacers - 1, pressurePa, Number.POSITIVE_INFINITY), byReserve)],
    ['more spacers', nearest(at(spacers + 1, 0, pressurePa), byReserve)],
  ];
  return found.flatMap(([kind, candidate]) =>
    candidate === undefined
      ? []
      : [{ kind, candidate, cost: costOf(candidate, chosen), breaks: brokenDemands(candidate, request) }],
  );
}

const costOf = (candidate: EvaluatedCandidate, chosen: EvaluatedCandidate): BaselineAlternative['cost'] => ({
  risk: candidate.risk - chosen.risk,
  reserveAt95: candidate.reserveAt95 - chosen.reserveAt95,
  sagFraction: candidate.sagFraction - chosen.sagFraction,
  earlyForce: candidate.earlyForce - chosen.earlyForce,
  ...(candidate.diveTravel === undefined || chosen.diveTravel === undefined
    ? {}
    : { diveTravel: candidate.diveTravel - chosen.diveTravel }),
});
