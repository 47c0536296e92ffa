import type { Bike } from '../bikes/bikes.service.js';
import type { CompleteEndUncertaintyDto } from '../spring/end.dto.js';
import type { SpringUnit } from '../spring-units/spring-units.service.js';
import {
  DAMPING_SD,
  DEFAULT_READING_SD,
  GAUGE_SD_PSI,
  LOWER_LEG_VOLUME_SD,
  NEGATIVE_VOLUME_SD,
  POSITIVE_VOLUME_SD,
  RELATIVE_MASS_SD,
  RELATIVE_MASS_SD_ASSUMED_SHARE,
  SEAL_FRICTION_SD,
  SPACER_VOLUME_SD,
} from '../suspension/uncertainties.js';
import { millimetresFromMetres } from '@loamledger/units';

const PER_CENT = 100;

/** Standard uncertainties of an end of a bike: larger for what is assumed. */
export function bikeUncertainty(bike: Bike, unit: SpringUnit): CompleteEndUncertaintyDto {
  const pct = (sd: { known: number; assumed: number }, ...figures: (keyof SpringUnit['sources'])[]) =>
    PER_CENT * (figures.every((figure) => isKnown(unit.sources[figure])) ? sd.known : sd.assumed);
  const isShareKnown = bike.frontLoadShare !== null && isKnown(bike.sources.frontLoadShare);
  return {
    pressurePsi: GAUGE_SD_PSI,
    sprungMassPct: PER_CENT * (isShareKnown ? RELATIVE_MASS_SD : RELATIVE_MASS_SD_ASSUMED_SHARE),
    positiveVolumePct: pct(POSITIVE_VOLUME_SD, 'positiveVolume', 'boreArea'),
    negativeVolumePct: pct(NEGATIVE_VOLUME_SD, 'negativeVolume'),
    spacerVolumePct: pct(SPACER_VOLUME_SD, 'spacerVolume'),
    lowerLegVolumePct: pct(LOWER_LEG_VOLUME_SD, 'lowerLegVolume', 'lowerLegArea'),
    dampingPct: pct(DAMPING_SD, 'damperLowSpeed', 'damperKneeSpeed', 'damperHighSpeed'),
    sealFrictionPct: pct(SEAL_FRICTION_SD, 'sealFriction'),
    readingMm: millimetresFromMetres(DEFAULT_READING_SD),
  };
}

const isKnown = (source: string | undefined): boolean => source !== undefined && source !== 'assumed';
