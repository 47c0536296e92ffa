import { millimetresFromMetres } from '@loamledger/units';
import {
  DAMPING_SD,
  DEFAULT_READING_SD,
  GAUGE_SD_PSI,
  LOWER_LEG_VOLUME_SD,
  NEGATIVE_VOLUME_SD,
  POSITIVE_VOLUME_SD,
  RELATIVE_MASS_SD_ASSUMED_SHARE,
  SEAL_FRICTION_SD,
  SPACER_VOLUME_SD,
} from '../suspension/uncertainties.js';
import type { CompleteEndUncertaintyDto, EndUncertaintyDto } from './end.dto.js';
import { UNCERTAIN, type Uncertain } from './uncertain.js';

const PER_CENT = 100;

/** Where a question tells none: what is assumed of a unit that nobody has measured. */
const ASSUMED: CompleteEndUncertaintyDto = {
  pressurePsi: GAUGE_SD_PSI,
  sprungMassPct: PER_CENT * RELATIVE_MASS_SD_ASSUMED_SHARE,
  positiveVolumePct: PER_CENT * POSITIVE_VOLUME_SD.assumed,
  negativeVolumePct: PER_CENT * NEGATIVE_VOLUME_SD.assumed,
  spacerVolumePct: PER_CENT * SPACER_VOLUME_SD.assumed,
  lowerLegVolumePct: PER_CENT * LOWER_LEG_VOLUME_SD.assumed,
  dampingPct: PER_CENT * DAMPING_SD.assumed,
  sealFrictionPct: PER_CENT * SEAL_FRICTION_SD.assumed,
  readingMm: millimetresFromMetres(DEFAULT_READING_SD),
};

/** The uncertainties that are told, with assumed ones for the rest, and which those are. */
export function completeUncertainty(told: EndUncertaintyDto): {
  readonly uncertainty: CompleteEndUncertaintyDto;
  readonly assumed: readonly Uncertain[];
} {
  return {
    uncertainty: {
      pressurePsi: told.pressurePsi ?? ASSUMED.pressurePsi,
      sprungMassPct: told.sprungMassPct ?? ASSUMED.sprungMassPct,
      positiveVolumePct: told.positiveVolumePct ?? ASSUMED.positiveVolumePct,
      negativeVolumePct: told.negativeVolumePct ?? ASSUMED.negativeVolumePct,
      spacerVolumePct: told.spacerVolumePct ?? ASSUMED.spacerVolumePct,
      lowerLegVolumePct: told.lowerLegVolumePct ?? ASSUMED.lowerLegVolumePct,
      dampingPct: told.dampingPct ?? ASSUMED.dampingPct,
      sealFrictionPct: told.sealFrictionPct ?? ASSUMED.sealFrictionPct,
      readingMm: told.readingMm ?? ASSUMED.readingMm,
    },
    assumed: UNCERTAIN.filter((name) => told[name] === undefined),
  };
}
