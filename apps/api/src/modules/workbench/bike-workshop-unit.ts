import type { EqualisedUnit } from '../spring/identify-negative-volume.js';
import type { IdentifiedUnit } from '../spring/identify-volume.js';
import type { QuestionEnd } from '../spring/question-end.js';
import type { SpringUnit } from '../spring-units/spring-units.service.js';

const PER_CENT = 100;

/** What a stored unit tells where its positive chamber is sought. */
export const identifiedBikeUnit = (unit: SpringUnit, end: QuestionEnd): IdentifiedUnit => ({
  boreArea: unit.boreArea,
  spacerVolume: unit.spacerVolume,
  ambientPressure: end.ambient.pressure,
  assumed: assumedOf(end, ['boreAreaMm2', 'spacerVolumeMl', 'altitudeM']),
});

/** What a stored unit tells where its negative chamber is sought. */
export const equalisedBikeUnit = (unit: SpringUnit, end: QuestionEnd): EqualisedUnit => ({
  positiveVolume: {
    value: unit.positiveVolume,
    sd: (end.uncertainty.positiveVolumePct / PER_CENT) * unit.positiveVolume,
  },
  spacerVolume: unit.spacerVolume,
  boreArea: unit.boreArea,
  shaftArea: unit.shaftArea,
  transferPosition: unit.transferPosition,
  ambientPressure: end.ambient.pressure,
  assumed: assumedOf(end, [
    'positiveVolumeMl',
    'spacerVolumeMl',
    'boreAreaMm2',
    'shaftAreaMm2',
    'transferPositionMm',
    'altitudeM',
  ]),
});

/** Of all that is assumed about the end only what enters here. */
const assumedOf = ({ assumed }: QuestionEnd, entering: readonly string[]): string[] =>
  assumed.filter((name) => entering.includes(name));
