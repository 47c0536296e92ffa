import { exceedance, predictDemand } from '@loamledger/evidence';
import { sag } from '@loamledger/spring';
import { millimetresFromMetres } from '@loamledger/units';
import { candidate } from '../baselines/end-candidates.js';
import type { ExpectedEndDto } from '../decisions/expectation.dto.js';
import type { TeamDemand } from '../demand/demand.service.js';
import { hitForecast } from '../demand/forecast.js';
import { expectedHitAnswer } from '../demand/track-demand.js';
import type { SpringUnit } from '../spring-units/spring-units.service.js';
import { engineEnd, type End, type EndFill, type FilledAt } from '../suspension/end-inputs.js';
import { inputsWith } from './bike-end.js';
import type { BikeRecords } from './bike-records.js';

const PER_CENT = 100;

/** A fill, and where it was pumped in; null: at the track on the day. */
export interface Filled {
  readonly fill: EndFill;
  readonly filledAt: FilledAt | null;
}

/** What is expected of an end filled so: sag, and with a track what its hits will do. */
export function expectedOf(
  end: End,
  unit: SpringUnit,
  records: BikeRecords,
  { fill, filledAt }: Filled,
  demand: TeamDemand | null,
): ExpectedEndDto {
  const filled = engineEnd(inputsWith(end, unit, records, fill, filledAt));
  const { track, rider } = records;
  if (!track || !demand) {
    const settled = sag(filled.spring, filled.end);
    const unknown = { medianTravelMm: null, travel95Mm: null, riskPct: null, hit: null };
    return { sagPct: PER_CENT * settled.fraction, ...unknown };
  }
  const who = { riderId: rider.id, trackId: track.id };
  const forecast = hitForecast(demand.fit, who);
  const hits = { median: forecast.median, high: forecast.p95 };
  const tried = candidate(filled, filled.spring.fill.gaugePressure, fill.spacers, hits);
  return {
    sagPct: PER_CENT * tried.sagFraction,
    medianTravelMm: millimetresFromMetres(tried.travelAtMedian),
    travel95Mm: millimetresFromMetres(tried.travelAt95),
    riskPct: PER_CENT * exceedance(predictDemand(demand.fit, who), tried.bottomingLogHeight),
    hit: expectedHitAnswer(forecast.hit),
  };
}
