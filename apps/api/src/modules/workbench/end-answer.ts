import {
  celsiusFromKelvin,
  degreesFromRadian,
  gaugePascal,
  hectopascalFromAbsolutePascal,
  millimetresFromMetres,
  psiFromGaugePascal,
  radian,
} from '@loamledger/units';
import { evidenceLevel } from '@loamledger/evidence';
import type { TeamDemand } from '../demand/demand.service.js';
import { hitForecast } from '../demand/forecast.js';
import { evidenceAnswer, forecastAnswer } from '../demand/track-demand.js';
import type { Rider } from '../riders/riders.service.js';
import type { SpringUnit } from '../spring-units/spring-units.service.js';
import { figuresAnswer, sourcesAnswer } from '../spring-units/unit-figures.js';
import { assumedInputs } from '../suspension/assumed-inputs.js';
import { endSprungMass, type End } from '../suspension/end-inputs.js';
import { ambientOf, inputsAsSetUp } from './bike-end.js';
import type { BikeRecords } from './bike-records.js';
import { bikeUncertainty } from './bike-uncertainty.js';
import type { BikeEndDto, EndLimitsDto, EndWishesDto } from './ends.dto.js';
import { riskCurve } from './risk-curve.js';

const PER_CENT = 100;

/** One end of a bike, field by field; `demand` with a track only. */
export function bikeEndAnswer(
  end: End,
  unit: SpringUnit,
  records: BikeRecords,
  demand: TeamDemand | null,
): BikeEndDto {
  const { bike, rider } = records;
  const ambient = ambientOf(records);
  return {
    unitId: unit.id,
    unitName: unit.name,
    unit: figuresAnswer(unit),
    sources: sourcesAnswer(unit),
    limits: limitsAnswer(unit),
    spacersInStock: records.inStock(unit),
    fill: fillAnswer(end, unit, records),
    ambientPressureHpa: hectopascalFromAbsolutePascal(ambient.pressure),
    airTemperatureC: celsiusFromKelvin(ambient.temperature),
    sprungMassKg: endSprungMass(end, bike, rider),
    headAngleDeg: end === 'fork' ? degreesFromRadian(radian(bike.headAngle)) : null,
    leverageTable:
      end === 'fork'
        ? []
        : (bike.leverageTable ?? []).map((row) => ({
            shockTravelMm: millimetresFromMetres(row.shockTravel),
            leverageRatio: row.leverageRatio,
          })),
    uncertainty: bikeUncertainty(bike, unit),
    ...demandAnswer(records, demand),
    wishes: wishesAnswer(end, rider),
    assumed: assumedInputs(end, { unit, bike, rider }).map((input) => ({ ...input })),
  };
}

const limitsAnswer = ({ minPressure, maxPressure, maxSpacers }: SpringUnit): EndLimitsDto => ({
  minPressurePsi: minPressure === null ? null : psiFromGaugePascal(gaugePascal(minPressure)),
  maxPressurePsi: maxPressure === null ? null : psiFromGaugePascal(gaugePascal(maxPressure)),
  maxSpacers,
});

function fillAnswer(end: End, unit: SpringUnit, records: BikeRecords): BikeEndDto['fill'] {
  const inputs = inputsAsSetUp(end, unit, records);
  return (
    inputs && {
      pressurePsi: psiFromGaugePascal(gaugePascal(inputs.fill.gaugePressure)),
      spacers: inputs.fill.spacers,
    }
  );
}

function demandAnswer(
  { track, rider }: BikeRecords,
  demand: TeamDemand | null,
): Pick<BikeEndDto, 'forecast' | 'riskCurve' | 'evidence'> {
  if (!track || !demand) return { forecast: null, riskCurve: [], evidence: null };
  const who = { riderId: rider.id, trackId: track.id };
  return {
    forecast: forecastAnswer(hitForecast(demand.fit, who)),
    riskCurve: riskCurve(demand.fit, who),
    evidence: evidenceAnswer(evidenceLevel(demand.readings, rider.id, track.id)),
  };
}

function wishesAnswer(end: End, rider: Rider): EndWishesDto {
  const isFork = end === 'fork';
  return {
    sagLowPct: PER_CENT * (isFork ? rider.forkSagLow : rider.shockSagLow),
    sagHighPct: PER_CENT * (isFork ? rider.forkSagHigh : rider.shockSagHigh),
    reservePct: PER_CENT * (isFork ? rider.forkReserve : rider.shockReserve),
    acceptedRiskPct: PER_CENT * rider.acceptedRisk,
  };
}
