import type { GaugePascal } from '@loamledger/units';
import {
  EvidenceInputError,
  requireBetween,
  requireFinite,
  requireNotNegative,
  requirePositive,
} from '../errors.js';
import { exceedance, type PredictiveDistribution } from '../demand/predict.js';

/** One set-up with what the engine says about it on the track in question. */
export interface BaselineCandidate {
  pressurePa: GaugePascal;
  /** Volume spacers in the positive chamber. */
  spacers: number;
  /** Sag as a share of the stroke. */
  sagFraction: number;
  /** Natural log of the hit height (m) at which it just bottoms out; +Infinity if nothing bottoms it. */
  bottomingLogHeight: number;
  /** Travel used at the median and the 95th-percentile hit, m. */
  travelAtMedian: number;
  travelAt95: number;
  /** Force at 20 % of the travel, N; lower is more supple. */
  earlyForce: number;
  /** Travel used in the reference braking, m, where it is known. */
  diveTravel?: number;
}

/** A candidate with its risk a run and its reserves. */
export interface EvaluatedCandidate extends BaselineCandidate {
  /** Probability that one run bottoms out. */
  risk: number;
  /** Travel left at the 95th-percentile hit, m. */
  reserveAt95: number;
  /** Travel left at the median hit, m. */
  reserveAtMedian: number;
}

/** Limits entered for the unit; nothing outside them is ever an answer. */
export interface UnitLimits {
  minPressurePa: GaugePascal;
  maxPressurePa: GaugePascal;
  maxSpacers: number;
}

/** All that a choice rests on. */
export interface BaselineRequest {
  candidates: readonly BaselineCandidate[];
  /** null: none entered, so nothing is recommended. */
  limits: UnitLimits | null;
  /** Sag wanted, as shares of the stroke. */
  sagBand: { min: number; max: number };
  /** Accepted probability of a bottom-out a run. */
  acceptedRisk: number;
  /** Travel that should be left at the 95th-percentile hit, m. */
  wantedReserve: number;
  /** m. */
  stroke: number;
  /** Travel under the reference braking that should not be exceeded, m, where one is known. */
  allowedDive?: number;
  predictive: PredictiveDistribution;
  /** What is in the unit now. */
  current?: Pick<BaselineCandidate, 'pressurePa' | 'spacers'>;
}

/** Risk (dimensionless) and reserves (m) of a candidate: risk = P(log h > bottomingLogHeight). */
export function evaluateCandidate(
  candidate: BaselineCandidate,
  request: BaselineRequest,
): EvaluatedCandidate {
  return {
    ...candidate,
    risk: exceedance(request.predictive, candidate.bottomingLogHeight),
    reserveAt95: request.stroke - candidate.travelAt95,
    reserveAtMedian: request.stroke - candidate.travelAtMedian,
  };
}

/** Whether a set-up lies inside the limits entered for its unit, both ends included. */
export const isWithinLimits = (setUp: { pressurePa: number; spacers: number }, limits: UnitLimits): boolean =>
  setUp.pressurePa >= limits.minPressurePa &&
  setUp.pressurePa <= limits.maxPressurePa &&
  setUp.spacers <= limits.maxSpacers;

/** Throws EvidenceInputError for a request that no engine and no form can have made. */
export function requireBaselineRequest(request: BaselineRequest): void {
  requirePositive('stroke', request.stroke, 'm');
  requireBetween('wantedReserve', request.wantedReserve, 'm', 0, request.stroke);
  requireBetween('acceptedRisk', request.acceptedRisk, 'probability', 0, 1);
  requireBetween('sagBand.min', request.sagBand.min, 'share of stroke', 0, 1);
  requireBetween('sagBand.max', request.sagBand.max, 'share of stroke', request.sagBand.min, 1);
  if (request.allowedDive !== undefined) requireNotNegative('allowedDive', request.allowedDive, 'm');
  if (request.limits !== null) {
    requireNotNegative('limits.minPressurePa', request.limits.minPressurePa, 'Pa gauge');
    requireBetween(
      'limits.maxPressurePa',
      request.limits.maxPressurePa,
      'Pa gauge',
      request.limits.minPressurePa,
      Number.MAX_VALUE,
    );
    requireNotNegative('limits.maxSpacers', request.limits.maxSpacers, 'spacers');
  }
  if (request.current !== undefined) {
    requireNotNegative('current.pressurePa', request.current.pressurePa, 'Pa gauge');
    requireNotNegative('current.spacers', request.current.spacers, 'spacers');
  }
  if (request.predictive.weights.length === 0) {
    throw new EvidenceInputError('predictive', 0, 'parts', 'at least one part');
  }
  for (const [i, candidate] of request.candidates.entries()) requireCandidate(`candidates[${i}]`, candidate);
}

function requireCandidate(name: string, candidate: BaselineCandidate): void {
  requireNotNegative(`${name}.pressurePa`, candidate.pressurePa, 'Pa gauge');
  requireNotNegative(`${name}.spacers`, candidate.spacers, 'spacers');
  requireBetween(`${name}.sagFraction`, candidate.sagFraction, 'share of stroke', 0, 1);
  requireNotNegative(`${name}.travelAtMedian`, candidate.travelAtMedian, 'm');
  requireNotNegative(`${name}.travelAt95`, candidate.travelAt95, 'm');
  requireFinite(`${name}.earlyForce`, candidate.earlyForce, 'N');
  if (candidate.diveTravel !== undefined) requireNotNegative(`${name}.diveTravel`, candidate.diveTravel, 'm');
  if (Number.isNaN(candidate.bottomingLogHeight)) {
    throw new EvidenceInputError(
      `${name}.bottomingLogHeight`,
      candidate.bottomingLogHeight,
      'log m',
      'not NaN',
    );
  }
}
