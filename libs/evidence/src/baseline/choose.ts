import { alternativesTo, type BaselineAlternative } from './alternatives.js';
import {
  evaluateCandidate,
  isWithinLimits,
  requireBaselineRequest,
  type BaselineRequest,
  type EvaluatedCandidate,
} from './candidate.js';
import { meets, meetsStrict, shortfall, STRICT_DEMANDS, type DemandOnSetUp } from './demands.js';
import { nearest } from './nearest.js';
import { stepsTowards, type SetUpStep } from './steps.js';

/** How many candidates were left after each demand, each counted on its own within the limits. */
export interface BaselineCounts {
  candidates: number;
  withinLimits: number;
  withinSagBand: number;
  withinRisk: number;
  withinDive: number;
  /** Sag band and risk together. */
  feasible: number;
}

interface Answer {
  message: string;
  reasons: string[];
  counts: BaselineCounts;
}

/** The recommended set-up, or why there is none. */
export type BaselineChoice =
  | (Answer & {
      status: 'recommended';
      chosen: EvaluatedCandidate;
      alternatives: BaselineAlternative[];
      /** Set-ups to ride one after another, the chosen one last; empty when it is in the unit already. */
      steps: SetUpStep[];
    })
  | (Answer & {
      status: 'not feasible';
      unmet: ('limits' | DemandOnSetUp)[];
      /** Inside the limits and nearest to meeting the demands; null when no candidate is inside the limits. */
      nearest: EvaluatedCandidate | null;
    })
  | (Answer & { status: 'no limits' });

/** Reading error of a ring, m: a reserve this close to the wanted one is as good as it (common practice, no source). */
const RING_READING_ERROR = 0.002;
/** Half of what a ring is read to, m: reserves that differ by less are the same on the bike (common practice, no source). */
const SAME_RESERVE = 0.0005;

/**
 * Chooses a set-up among candidates that the engine has evaluated; reserves in m, risks as probabilities a run.
 *
 * Limits first, then sag band and risk P(log h > bottoming) ≤ accepted. Of what is left, those that dive no deeper
 * under braking than allowed, if there are any; of these, those whose reserve at the 95th-percentile hit is
 * within the ring's reading error of the wanted one or, where none is, as near to it as the nearest; of these the one with
 * the lowest early force. Equal candidates: fewer spacers, then less pressure.
 * Never throws for lack of an answer: no limits and not feasible are statuses. Throws EvidenceInputError for
 * impossible input.
 */
export function chooseBaseline(request: BaselineRequest): BaselineChoice {
  requireBaselineRequest(request);
  const { limits } = request;
  if (limits === null) {
    return {
      status: 'no limits',
      message:
        'No limits are entered for this unit: nothing is recommended until its pressure and spacer limits are.',
      reasons: [],
      counts: countCandidates([], request),
    };
  }
  const within = request.candidates
    .filter((candidate) => isWithinLimits(candidate, limits))
    .map((candidate) => evaluateCandidate(candidate, request));
  const counts = countCandidates(within, request);
  const feasible = within.filter((candidate) => meetsStrict(candidate, request));
  const noDeeper = feasible.filter((candidate) => meets('dive', candidate, request));
  const chosen = mostSuppleNear(noDeeper.length > 0 ? noDeeper : feasible, request.wantedReserve);
  if (chosen === undefined) return notFeasible(within, counts, request);
  return {
    status: 'recommended',
    message:
      'Meets the limits, the sag band and the accepted risk, with the reserve nearest to the one wanted.',
    reasons: reasonsFor(chosen, counts, request),
    counts,
    chosen,
    alternatives: alternativesTo(chosen, within, request),
    steps: stepsTowards(request.current, chosen, within, limits),
  };
}

function mostSuppleNear(
  candidates: readonly EvaluatedCandidate[],
  wanted: number,
): EvaluatedCandidate | undefined {
  const distance = (candidate: EvaluatedCandidate): number => Math.abs(candidate.reserveAt95 - wanted);
  const best = nearest(candidates, distance);
  if (best === undefined) return undefined;
  // Where none can leave what is wanted, suppleness is not paid for with being still further off.
  const near = Math.max(RING_READING_ERROR, distance(best) + SAME_RESERVE);
  const alike = candidates.filter((candidate) => distance(candidate) <= near);
  return nearest(alike, (candidate) => candidate.earlyForce);
}

function countCandidates(within: readonly EvaluatedCandidate[], request: BaselineRequest): BaselineCounts {
  const meeting = (demand: DemandOnSetUp): number =>
    within.filter((candidate) => meets(demand, candidate, request)).length;
  return {
    candidates: request.candidates.length,
    withinLimits: within.length,
    withinSagBand: meeting('sag band'),
    withinRisk: meeting('risk'),
    withinDive: meeting('dive'),
    feasible: within.filter((candidate) => meetsStrict(candidate, request)).length,
  };
}

function notFeasible(
  within: readonly EvaluatedCandidate[],
  counts: BaselineCounts,
  request: BaselineRequest,
): BaselineChoice {
  if (within.length === 0) {
    return {
      status: 'not feasible',
      message: "No candidate lies inside the unit's limits.",
      reasons: [],
      counts,
      unmet: ['limits'],
      nearest: null,
    };
  }
  const closest = nearest(within, (candidate) => shortfall(candidate, request)) ?? null;
  const alone = STRICT_DEMANDS.filter(
    (demand) => !within.some((candidate) => meets(demand, candidate, request)),
  );
  const unmet =
    alone.length > 0 || closest === null
      ? alone
      : STRICT_DEMANDS.filter((demand) => !meets(demand, closest, request));
  const words = unmet.join(' and ');
  const message =
    alone.length > 0
      ? `No set-up inside the unit's limits meets the demand on ${words}.`
      : `Each demand can be met, but not all at once: the nearest set-up inside the limits misses the one on ${words}.`;
  return {
    status: 'not feasible',
    message,
    reasons: closest === null ? [] : reasonsFor(closest, counts, request),
    counts,
    unmet,
    nearest: closest,
  };
}

const PER_CENT = 100;
const MILLIMETRES_PER_METRE = 1000;

const percent = (share: number): string => `${(share * PER_CENT).toFixed(1)} %`;
const millimetres = (metres: number): string => `${(metres * MILLIMETRES_PER_METRE).toFixed(0)} mm`;

function reasonsFor(
  candidate: EvaluatedCandidate,
  counts: BaselineCounts,
  request: BaselineRequest,
): string[] {
  const { sagBand, acceptedRisk, wantedReserve, allowedDive } = request;
  const reasons = [
    `${counts.feasible} of ${counts.withinLimits} set-ups inside the limits meet the demands on sag and risk.`,
    `Sag ${percent(candidate.sagFraction)}; wanted ${percent(sagBand.min)} to ${percent(sagBand.max)}.`,
    `Risk of a bottom-out ${percent(candidate.risk)} a run; accepted ${percent(acceptedRisk)}.`,
    `Reserve at the 95th-percentile hit ${millimetres(candidate.reserveAt95)}; wanted ${millimetres(wantedReserve)}.`,
  ];
  if (allowedDive !== undefined && candidate.diveTravel !== undefined) {
    const isDeeper = candidate.diveTravel > allowedDive;
    reasons.push(
      `Uses ${millimetres(candidate.diveTravel)} under braking; kept set-ups allow ${millimetres(allowedDive)}.` +
        (isDeeper ? ' No set-up that meets the other demands dives less.' : ''),
    );
  }
  return reasons;
}
