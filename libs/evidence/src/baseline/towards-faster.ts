import { evaluateCandidate, isWithinLimits } from './candidate.js';
import type { BaselineCandidate, BaselineRequest, EvaluatedCandidate } from './candidate.js';
import { meetsStrict } from './demands.js';
import { nearest } from './nearest.js';

/**
 * The candidate inside the limits that meets sag band and risk and rides most like one that was faster on time;
 * undefined where none does.
 *
 * Unlike = |ΔF|/F in the early stroke (N) + |Δs|/stroke at the 95th-percentile hit (m): both ends of the stroke count as
 * shares of themselves. `faster` need not be a candidate.
 */
export function nearestToFaster(
  faster: BaselineCandidate,
  request: BaselineRequest,
): EvaluatedCandidate | undefined {
  const { limits, stroke } = request;
  if (limits === null) return undefined;
  const feasible = request.candidates
    .filter((candidate) => isWithinLimits(candidate, limits))
    .map((candidate) => evaluateCandidate(candidate, request))
    .filter((candidate) => meetsStrict(candidate, request));
  return nearest(
    feasible,
    ({ earlyForce, travelAt95 }) =>
      Math.abs(earlyForce / faster.earlyForce - 1) + Math.abs(travelAt95 - faster.travelAt95) / stroke,
  );
}
