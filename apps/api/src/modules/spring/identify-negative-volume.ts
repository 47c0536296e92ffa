import { identifyNegativeVolume, type EqualisingProcedure } from '@loamledger/spring';
import {
  cubicMetresFromMillilitres,
  gaugePascalFromPsi,
  millilitresFromCubicMetres,
  squareMillimetresFromSquareMetres,
} from '@loamledger/units';
import { InvalidField } from '../../platform/errors/refusal.js';
import type { EngineFields } from '../spring-units/engine-refusal.js';
import type { NegativeVolumeAnswerDto, NegativeVolumeAskDto } from './identify-negative-volume.dto.js';
import { aboutAnswer, askEngine, LENGTH_UNIT, PRESSURE_UNIT } from './question-end.js';

/** Standard uncertainties where none are told. Common practice, no source. */
const ASSUMED_HOSE_SD_ML = 1.5;
const ASSUMED_READING_SD_PSI = 0.5;

/** The unit whose negative chamber is sought, SI units; `positiveVolume` without spacers. */
export interface EqualisedUnit extends Pick<
  EqualisingProcedure,
  'ambientPressure' | 'positiveVolume' | 'boreArea' | 'shaftArea' | 'transferPosition'
> {
  readonly spacerVolume: number;
  readonly assumed: readonly string[];
}

const FIELDS: EngineFields = {
  'repeats.length': { field: 'repeats', unit: 'repeats', fromSi: (count) => count },
  'repeats[].before': { field: 'repeats.#.beforePsi', ...PRESSURE_UNIT },
  'repeats[].after': { field: 'repeats.#.afterPsi', ...PRESSURE_UNIT },
  shaftArea: { field: 'shaftAreaMm2', unit: 'mm²', fromSi: squareMillimetresFromSquareMetres },
  transferPosition: { field: 'transferPositionMm', ...LENGTH_UNIT },
};

/** Volume of a negative chamber from the drop of pressure when it fills. */
export function negativeVolumeAnswer(
  unit: EqualisedUnit,
  ask: NegativeVolumeAskDto,
): NegativeVolumeAnswerDto {
  const { positiveVolume, spacerVolume, assumed, ambientPressure, boreArea, shaftArea, transferPosition } =
    unit;
  const volumeLeft = positiveVolume.value - ask.spacers * spacerVolume;
  if (!(volumeLeft > 0)) {
    throw new InvalidField(
      'spring.impossible',
      'spacers',
      ask.spacers,
      'few enough to leave air in the chamber',
    );
  }
  const found = askEngine(FIELDS, () =>
    identifyNegativeVolume({
      repeats: ask.repeats.map(({ beforePsi, afterPsi }) => ({
        before: gaugePascalFromPsi(beforePsi),
        after: gaugePascalFromPsi(afterPsi),
      })),
      ambientPressure,
      boreArea,
      shaftArea,
      transferPosition,
      positiveVolume: { value: volumeLeft, sd: positiveVolume.sd },
      hoseVolume: {
        value: cubicMetresFromMillilitres(ask.hoseVolumeMl),
        sd: cubicMetresFromMillilitres(ask.hoseVolumeSdMl ?? ASSUMED_HOSE_SD_ML),
      },
      gaugeReadingSd: gaugePascalFromPsi(ask.gaugeReadingSdPsi ?? ASSUMED_READING_SD_PSI),
    }),
  );
  const leftOut = (['hoseVolumeSdMl', 'gaugeReadingSdPsi'] as const).filter(
    (name) => ask[name] === undefined,
  );
  const about = aboutAnswer({ assumed: [...assumed, ...leftOut] });
  if (found.status === 'refused') {
    const { status, reason, message } = found;
    return { status, reason, message, negativeVolumeMl: null, sdMl: null, ...about };
  }
  const volume = millilitresFromCubicMetres(found.negativeVolume);
  const sd = millilitresFromCubicMetres(found.sd);
  return {
    status: found.status,
    reason: null,
    message: `${volume.toFixed(1)} mL ± ${sd.toFixed(1)} mL.`,
    negativeVolumeMl: volume,
    sdMl: sd,
    ...about,
  };
}
