import {
  cubicMetresFromMillilitres,
  metresFromMillimetres,
  squareMetresFromSquareMillimetres,
} from '@loamledger/units';
import type { EqualisedUnit } from './identify-negative-volume.js';
import type { NegativeVolumeQuestionDto } from './identify-negative-volume.dto.js';
import type { IdentifiedUnit } from './identify-volume.js';
import type { VolumeQuestionDto } from './identify-volume.dto.js';
import { ambientOf, assumedAir } from './question-end.js';
import type { AirDto } from './end.dto.js';

/** What a question tells of the unit whose positive chamber is sought. */
export const identifiedUnitOf = ({
  boreAreaMm2,
  spacerVolumeMl,
  air,
}: VolumeQuestionDto): IdentifiedUnit => ({
  boreArea: squareMetresFromSquareMillimetres(boreAreaMm2),
  spacerVolume: cubicMetresFromMillilitres(spacerVolumeMl ?? 0),
  ...airOf(air),
});

/** What a question tells of the unit whose negative chamber is sought. */
export const equalisedUnitOf = (question: NegativeVolumeQuestionDto): EqualisedUnit => ({
  positiveVolume: {
    value: cubicMetresFromMillilitres(question.positiveVolumeMl),
    sd: cubicMetresFromMillilitres(question.positiveVolumeSdMl),
  },
  spacerVolume: cubicMetresFromMillilitres(question.spacerVolumeMl),
  boreArea: squareMetresFromSquareMillimetres(question.boreAreaMm2),
  shaftArea: squareMetresFromSquareMillimetres(question.shaftAreaMm2),
  transferPosition: metresFromMillimetres(question.transferPositionMm),
  ...airOf(question.air),
});

const airOf = (air: AirDto = {}) => ({
  ambientPressure: ambientOf(air).pressure,
  assumed: assumedAir(air)
    // The readings are of one temperature, whatever it is.
    .filter((name) => name !== 'airTemperatureC')
    .map((name) => `air.${name}`),
});
