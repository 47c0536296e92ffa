import {
  chooseBaseline,
  evidenceLevel,
  exceedance,
  nearestToFaster,
  predictDemand,
  type BaselineChoice,
  type BaselineRequest,
  type EvaluatedCandidate,
  type EvidenceLevel,
  type PredictiveDistribution,
} from '@loamledger/evidence';
import { gaugePascal, type GaugePascal } from '@loamledger/units';
import { hitForecast, type HitForecast } from '../demand/forecast.js';
import type { TeamDemand } from '../demand/demand.service.js';
import type { AssumedInput } from '../suspension/assumed-inputs.js';
import type { EndFill } from '../suspension/end-inputs.js';
import { clicksFor, type ClicksAdvice } from './clicks.js';
import {
  candidate,
  candidatesWithin,
  type EndToFill,
  type EngineCandidate,
  type TrialHits,
} from './end-candidates.js';
import type { Clicks, KeptEnd } from './kept-set-ups.js';
import { sharpening, type Sharpening } from './sharpen.js';
import type { TimeVerdict } from './time-evidence.js';
import type { EndWishes } from './wishes.js';

/** Limits entered for the unit; null: at least one is missing. */
export type EndLimits = { minPressurePa: GaugePascal; maxPressurePa: GaugePascal; maxSpacers: number } | null;

/** Fills of this end that a plan on the track has told apart on time. */
export interface ToldApart {
  readonly verdict: TimeVerdict;
  readonly faster: EndFill;
  readonly slower: EndFill;
}

/** The same, with the set-up that meets the demands and rides most like the faster; null where none meets them. */
export interface TimeLine {
  readonly verdict: TimeVerdict;
  readonly faster: EvaluatedFill;
  readonly slower: EvaluatedFill;
  readonly towards: EvaluatedCandidate | null;
}

/** All that the baseline of one end rests on. */
export interface EndQuestion {
  /** The end as it stands at the track, with the current fill or any other. */
  readonly endToFill: EndToFill;
  readonly stroke: number;
  /** The fill now; null for a bike without a set-up. */
  readonly current: (EndFill & { readonly setupId: string; readonly clicks: Clicks }) | null;
  /** This end of the set-ups of this bike that were kept with this unit. */
  readonly keptHere: readonly KeptEnd[];
  readonly limits: EndLimits;
  readonly told: readonly ToldApart[];
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

/** The baseline of one end, SI units. */
export interface EndBaseline {
  readonly strokeM: number;
  readonly forecast: HitForecast;
  readonly evidence: EvidenceLevel;
  readonly current: EvaluatedFill | null;
  readonly choice: BaselineChoice;
  /** The choice's steps with their predictions; the last is the chosen set-up. */
  readonly steps: readonly EvaluatedFill[];
  readonly wishes: EndWishes;
  /** m; undefined where nothing says. */
  readonly allowedDive: number | undefined;
  /** null where no set-up is recommended, and where nobody has recorded clicks. */
  readonly clicks: ClicksAdvice | null;
  readonly time: readonly TimeLine[];
  readonly sharpening: Sharpening;
  readonly assumed: readonly AssumedInput[];
}

/** Travel under braking beyond that of a kept set-up which nobody tells apart, of the stroke. Common practice, no source. */
const DIVE_TOLERANCE = 0.02;

/** Chooses the baseline of one end from the engine's candidates and the team's demand. */
export function endBaseline(question: EndQuestion): EndBaseline {
  const { endToFill, stroke, wishes, limits, demand, who, keptHere } = question;
  const predictive = predictDemand(demand.fit, who);
  const forecast = hitForecast(demand.fit, who);
  const hits: TrialHits = { median: forecast.median, high: forecast.p95 };
  const dive = allowedDive(keptHere, stroke);
  const evaluate = (pressurePa: GaugePascal, spacers: number): EvaluatedFill =>
    evaluated(candidate(endToFill, pressurePa, spacers, hits), predictive, stroke);

  const current = question.current && {
    pressurePa: gaugePascal(question.current.pressure),
    spacers: question.current.spacers,
  };
  const request: BaselineRequest = {
    candidates: limits ? candidatesWithin(endToFill, limits, wishes.sagBand.value, hits) : [],
    limits,
    sagBand: wishes.sagBand.value,
    acceptedRisk: wishes.acceptedRisk,
    wantedReserve: Math.min(1, wishes.reserve.value) * stroke,
    stroke,
    predictive,
    ...(dive === undefined ? {} : { allowedDive: dive }),
    ...(current ? { current } : {}),
  };
  const choice = chooseBaseline(request);
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
    wishes,
    allowedDive: dive,
    clicks:
      choice.status === 'recommended'
        ? clicksOfChoice(question, currentFill, evaluate(choice.chosen.pressurePa, choice.chosen.spacers))
        : null,
    time: question.told.map(({ verdict, faster, slower }) => {
      const quicker = evaluate(gaugePascal(faster.pressure), faster.spacers);
      return {
        verdict,
        faster: quicker,
        slower: evaluate(gaugePascal(slower.pressure), slower.spacers),
        towards: nearestToFaster(quicker, request) ?? null,
      };
    }),
    sharpening: sharpening(demand.fit, who),
    assumed: question.assumed,
  };
}

function clicksOfChoice(
  { current, keptHere }: EndQuestion,
  now: EvaluatedFill | null,
  chosen: EvaluatedFill,
): ClicksAdvice | null {
  const clicksNow = current && now && { ...current, sagStiffness: now.sagStiffness };
  return clicksFor(chosen.sagStiffness, keptHere, clicksNow);
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

/** The deepest that kept set-ups of this bike dived, and what nobody tells from it, m; undefined where none was kept. */
function allowedDive(kept: readonly KeptEnd[], stroke: number): number | undefined {
  const dives = kept.flatMap(({ brakingTravel }) => brakingTravel ?? []);
  return dives.length === 0 ? undefined : Math.max(...dives) + DIVE_TOLERANCE * stroke;
}
