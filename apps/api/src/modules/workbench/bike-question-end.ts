import { assumedInputs } from '../suspension/assumed-inputs.js';
import { endSprungMass, type End } from '../suspension/end-inputs.js';
import { UNLIMITED_SPACERS, engineUnit } from '../spring-units/engine-unit.js';
import type { SpringUnit } from '../spring-units/spring-units.service.js';
import type { QuestionEnd } from '../spring/question-end.js';
import { UNCERTAIN, type Uncertain } from '../spring/uncertain.js';
import { ambientOf } from './bike-end.js';
import type { BikeRecords } from './bike-records.js';
import { bikeUncertainty } from './bike-uncertainty.js';

/** The end of a stored bike, for the engine's questions. */
export function bikeQuestionEnd(end: End, unit: SpringUnit, records: BikeRecords): QuestionEnd {
  const { bike, rider, track } = records;
  const figures = assumedInputs(end, { unit, bike, rider }).map(({ field }) => field);
  const assumedUncertainties = UNCERTAIN.filter((name) => isAssumed(name, figures));
  return {
    // A question is what would be: the limits entered for the unit bind what is done to it.
    unit: engineUnit({ ...unit, maxSpacers: UNLIMITED_SPACERS }),
    ambient: ambientOf(records),
    sprungMass: endSprungMass(end, bike, rider),
    leverage: end === 'fork' ? { headAngle: bike.headAngle } : { table: bike.leverageTable ?? [] },
    uncertainty: bikeUncertainty(bike, unit),
    assumedUncertainties,
    assumed: [...figures, ...(track ? ['airTemperatureC'] : ['altitudeM', 'airTemperatureC'])],
  };
}

/** The figures of unit, bike and rider that each uncertainty stands for. */
const FIGURES: Readonly<Record<Uncertain, readonly string[]>> = {
  // Of the gauge nobody has entered anything.
  pressurePsi: [],
  sprungMassPct: ['frontLoadSharePct', 'readyMassKg', 'massKg'],
  positiveVolumePct: ['positiveVolumeMl', 'boreAreaMm2'],
  negativeVolumePct: ['negativeVolumeMl'],
  spacerVolumePct: ['spacerVolumeMl'],
  lowerLegVolumePct: ['lowerLegVolumeMl', 'lowerLegAreaMm2'],
  dampingPct: ['damperLowSpeedNsPerM', 'damperKneeSpeedMPerS', 'damperHighSpeedNsPerM'],
  sealFrictionPct: ['sealFrictionN'],
};

const isAssumed = (name: Uncertain, figures: readonly string[]): boolean =>
  name === 'pressurePsi' || FIGURES[name].some((figure) => figures.includes(figure));
