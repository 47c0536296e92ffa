import type { EvaluatedCandidate } from '@loamledger/evidence';
import { millimetresFromMetres, psiFromGaugePascal } from '@loamledger/units';
import type { ExpectedEndDto } from '../decisions/decisions.dto.js';
import { evidenceAnswer, forecastAnswer } from '../demand/track-demand.js';
import type { EndBaseline } from './end-baseline.js';
import type { EndBaselineDto, EvaluatedFillDto } from './baselines.dto.js';

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
    current: baseline.current && fill(baseline.current),
    recommended: choice.status === 'recommended' ? fill(choice.chosen) : null,
    nearest: choice.status === 'not feasible' && choice.nearest ? fill(choice.nearest) : null,
    unmet: choice.status === 'not feasible' ? choice.unmet : [],
    steps: baseline.steps.map(fill),
    alternatives:
      choice.status === 'recommended'
        ? choice.alternatives.map(({ kind, candidate, breaks }) => ({ kind, fill: fill(candidate), breaks }))
        : [],
    rebound: baseline.rebound,
    assumed: baseline.assumed.map((input) => ({ ...input })),
  };
}

function fillAnswer(candidate: EvaluatedCandidate, stroke: number): EvaluatedFillDto {
  return {
    pressurePsi: psiFromGaugePascal(candidate.pressurePa),
    spacers: candidate.spacers,
    sagPct: candidate.sagFraction * PER_CENT,
    sagMm: millimetresFromMetres(candidate.sagFraction * stroke),
    medianTravelMm: millimetresFromMetres(candidate.travelAtMedian),
    travel95Mm: millimetresFromMetres(candidate.travelAt95),
    reserve95Mm: millimetresFromMetres(candidate.reserveAt95),
    riskPct: candidate.risk * PER_CENT,
    bottomingHeightM: Number.isFinite(candidate.bottomingLogHeight)
      ? Math.exp(candidate.bottomingLogHeight)
      : null,
  };
}

/** What a decision that takes this fill expects of it. */
export const expectationOf = (fill: EvaluatedFillDto): ExpectedEndDto => ({
  sagPct: fill.sagPct,
  medianTravelMm: fill.medianTravelMm,
  travel95Mm: fill.travel95Mm,
  riskPct: fill.riskPct,
});
