import type { BaselineAlternative, EvaluatedCandidate } from '@loamledger/evidence';
import { millimetresFromMetres, psiFromGaugePascal } from '@loamledger/units';
import type { ExpectedEndDto } from '../decisions/expectation.dto.js';
import { evidenceAnswer, forecastAnswer } from '../demand/track-demand.js';
import { reserveMessage, sharpenSentence, timeSentence, wishMessage } from './baseline-words.js';
import type { ClicksAdvice } from './clicks.js';
import type { ClicksDto, EndBaselineDto, SharpenDto, TimeLineDto, WantedDto } from './end-baseline.dto.js';
import type { EndBaseline, TimeLine } from './end-baseline.js';
import type { AlternativeCostDto, EvaluatedFillDto } from './fill.dto.js';
import { NEXT_RUNS } from './sharpen.js';

const PER_CENT = 100;

/** The answer about one end, field by field. */
export function endAnswer(baseline: EndBaseline, bumperLength: number): EndBaselineDto {
  const { choice, forecast, strokeM } = baseline;
  const fill = (candidate: EvaluatedCandidate) => fillAnswer(candidate, strokeM);
  return {
    status: choice.status,
    message: choice.message,
    reasons: choice.reasons,
    strokeMm: millimetresFromMetres(strokeM),
    bumperStartMm: millimetresFromMetres(strokeM - bumperLength),
    forecast: forecastAnswer(forecast),
    evidence: evidenceAnswer(baseline.evidence),
    wanted: wantedAnswer(baseline),
    current: baseline.current && fill(baseline.current),
    recommended: choice.status === 'recommended' ? fill(choice.chosen) : null,
    nearest: choice.status === 'not feasible' && choice.nearest ? fill(choice.nearest) : null,
    unmet: choice.status === 'not feasible' ? choice.unmet : [],
    steps: baseline.steps.map(fill),
    alternatives:
      choice.status === 'recommended'
        ? choice.alternatives.map(({ kind, candidate, cost, breaks }) => ({
            kind,
            fill: fill(candidate),
            cost: costAnswer(cost),
            breaks,
          }))
        : [],
    rebound: baseline.clicks?.rebound ?? 'leave',
    clicks: baseline.clicks && clicksAnswer(baseline.clicks),
    time: baseline.time.map((line) => timeAnswer(line, fill)),
    sharpen: sharpenAnswer(baseline),
    assumed: baseline.assumed.map((input) => ({ ...input })),
  };
}

function wantedAnswer({ wishes, allowedDive, strokeM }: EndBaseline): WantedDto {
  const { reserve, sagBand } = wishes;
  return {
    reserveMm: millimetresFromMetres(reserve.value * strokeM),
    reserveSource: reserve.source,
    reserveMessage: reserveMessage(wishes, strokeM),
    sagLowPct: sagBand.value.min * PER_CENT,
    sagHighPct: sagBand.value.max * PER_CENT,
    sagSource: sagBand.source,
    sagMessage: wishMessage(sagBand, 'The usual band.'),
    brakingTravelMm: allowedDive === undefined ? null : millimetresFromMetres(allowedDive),
  };
}

const costAnswer = (cost: BaselineAlternative['cost']): AlternativeCostDto => ({
  riskPct: cost.risk * PER_CENT,
  reserve95Mm: millimetresFromMetres(cost.reserveAt95),
  sagPct: cost.sagFraction * PER_CENT,
  earlyForceN: cost.earlyForce,
  brakingTravelMm: cost.diveTravel === undefined ? null : millimetresFromMetres(cost.diveTravel),
});

function clicksAnswer({ from, setupId, clicks }: ClicksAdvice): ClicksDto | null {
  const { rebound, compression } = clicks;
  if (rebound === null && compression === null) return null;
  return { from, setupId, reboundClicks: rebound, compressionClicks: compression };
}

function timeAnswer(line: TimeLine, fill: (candidate: EvaluatedCandidate) => EvaluatedFillDto): TimeLineDto {
  const { verdict, faster, slower, towards } = line;
  return {
    planId: verdict.planId,
    planName: verdict.planName,
    sentence: timeSentence(line),
    gainPct: verdict.gain.by * PER_CENT,
    gainLowPct: verdict.gain.low * PER_CENT,
    gainHighPct: verdict.gain.high * PER_CENT,
    faster: fill(faster),
    slower: fill(slower),
    towards: towards && fill(towards),
  };
}

const sharpenAnswer = ({ sharpening, evidence }: EndBaseline): SharpenDto => ({
  sentence: sharpenSentence(sharpening, evidence),
  lowM: sharpening.now.low,
  highM: sharpening.now.high,
  runs: NEXT_RUNS,
  options: sharpening.options.map(({ kind, then }) => ({ kind, lowM: then.low, highM: then.high })),
});

function fillAnswer(candidate: EvaluatedCandidate, stroke: number): EvaluatedFillDto {
  return {
    pressurePsi: psiFromGaugePascal(candidate.pressurePa),
    spacers: candidate.spacers,
    sagPct: candidate.sagFraction * PER_CENT,
    sagMm: millimetresFromMetres(candidate.sagFraction * stroke),
    medianTravelMm: millimetresFromMetres(candidate.travelAtMedian),
    travel95Mm: millimetresFromMetres(candidate.travelAt95),
    reserve95Mm: millimetresFromMetres(candidate.reserveAt95),
    brakingTravelMm: candidate.diveTravel === undefined ? null : millimetresFromMetres(candidate.diveTravel),
    earlyForceN: candidate.earlyForce,
    riskPct: candidate.risk * PER_CENT,
    bottomingHeightM: Number.isFinite(candidate.bottomingLogHeight)
      ? Math.exp(candidate.bottomingLogHeight)
      : null,
  };
}

/** What a decision that takes this fill expects of it. */
export const expectationOf = (end: EndBaselineDto, fill: EvaluatedFillDto): ExpectedEndDto => ({
  hit: end.forecast.hit,
  sagPct: fill.sagPct,
  medianTravelMm: fill.medianTravelMm,
  travel95Mm: fill.travel95Mm,
  riskPct: fill.riskPct,
});
