import {
  chooseBaseline,
  evidenceLevel,
  exceedance,
  predictDemand,
  type BaselineChoice,
  type EvaluatedCandidate,
  type EvidenceLevel,
  type PredictiveDistribution,
} from '@loamledger/evidence';
import { gaugePascal, type GaugePascal } from '@loamledger/units';
import { hitForecast, type HitForecast } from '../demand/forecast.js';
import type { TeamDemand } from '../demand/demand.service.js';
import type { AssumedInput } from '../suspension/assumed-inputs.js';
import { engineEnd, type EndFill, type EndInputs } from '../suspension/end-inputs.js';
import { candidate, candidatesWithin, type EngineCandidate, type TrialHits } from './end-candidates.js';

/** What a rider wants of one end; fractions of the stroke. */
interface EndWishes {
  readonly sagBand: { min: number; max: number };
  readonly reserve: number;
  readonly acceptedRisk: number;
}

/** Limits entered for the unit; null: at least one is missing. */
export type EndLimits = { minPressurePa: GaugePascal; maxPressurePa: GaugePascal; maxSpacers: number } | null;

/** All that the baseline of one end rests on. */
export interface EndQuestion {
  /** The end as it stands at the track, with the current fill or any other. */
  readonly inputs: EndInputs;
  /** The fill now; null for a bike without a set-up. */
  readonly current: EndFill | null;
  readonly limits: EndLimits;
  readonly wishes: EndWishes;
  readonly demand: TeamDemand;
  /** The run in question. */
  readonly who: { readonly riderId: string; readonly trackId: string; readonly condition: string };
  readonly assumed: readonly AssumedInput[];
}

/** A set-up of one end with its predictions, SI units. */
interface EvaluatedFill extends EvaluatedCandidate {
  readonly sagStiffness: number;
}

/** How a changed spring rate asks the rebound to be looked at. */
type ReboundHint = 'leave' | 'try slower' | 'try faster';

/** The baseline of one end, SI units. */
export interface EndBaseline {
  readonly strokeM: number;
  readonly forecast: HitForecast;
  readonly evidence: EvidenceLevel;
  readonly current: EvaluatedFill | null;
  readonly choice: BaselineChoice;
  /** The choice's steps with their predictions; the last is the chosen set-up. */
  readonly steps: readonly EvaluatedFill[];
  readonly rebound: ReboundHint;
  readonly assumed: readonly AssumedInput[];
}

/** A change of stiffness at sag that asks for another rebound setting, relative. Common practice, no source. */
const NOTICEABLE_STIFFNESS_CHANGE = 0.05;

/** Chooses the baseline of one end from the engine's candidates and the team's demand. */
export function endBaseline(question: EndQuestion): EndBaseline {
  const { inputs, wishes, limits, demand, who } = question;
  const predictive = predictDemand(demand.fit, who);
  const forecast = hitForecast(demand.fit, who);
  const hits: TrialHits = { median: forecast.median, high: forecast.p95 };
  const endToFill = engineEnd(inputs);
  const { stroke } = inputs.unit;
  const evaluate = (pressurePa: GaugePascal, spacers: number): EvaluatedFill =>
    evaluated(candidate(endToFill, pressurePa, spacers, hits), predictive, stroke);

  const current = question.current && {
    pressurePa: gaugePascal(question.current.pressure),
    spacers: question.current.spacers,
  };
  const choice = chooseBaseline({
    candidates: limits ? candidatesWithin(endToFill, limits, wishes.sagBand, hits) : [],
    limits,
    sagBand: wishes.sagBand,
    acceptedRisk: wishes.acceptedRisk,
    wantedReserve: wishes.reserve * stroke,
    stroke,
    predictive,
    ...(current ? { current } : {}),
  });
  const currentFill = current && evaluate(current.pressurePa, current.spacers);
  const steps =
    choice.status === 'recommended'
      ? choice.steps.map(({ pressurePa, spacers }) => evaluate(pressurePa, spacers))
      : [];
  return {
    strokeM: stroke,
    forecast,
    evidence: evidenceLevel(demand.readings, who.riderId, who.trackId),
    current: currentFill,
    choice,
    steps,
    rebound: reboundHint(currentFill, steps.at(-1)),
    assumed: question.assumed,
  };
}

function evaluated(
  tried: EngineCandidate,
  predictive: PredictiveDistribution,
  stroke: number,
): EvaluatedFill {
  return {
    ...tried,
    risk: exceedance(predictive, tried.bottomingLogHeight),
    reserveAt95: stroke - tried.travelAt95,
    reserveAtMedian: stroke - tried.travelAtMedian,
  };
}

/** A stiffer spring pushes back harder: the same clicks then let it rebound faster. */
function reboundHint(now: EvaluatedFill | null, chosen: EvaluatedFill | undefined): ReboundHint {
  if (!now || !chosen) return 'leave';
  const change = chosen.sagStiffness / now.sagStiffness - 1;
  if (Math.abs(change) < NOTICEABLE_STIFFNESS_CHANGE) return 'leave';
  return change > 0 ? 'try slower' : 'try faster';
}
