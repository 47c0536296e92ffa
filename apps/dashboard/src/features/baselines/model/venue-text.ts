import { formatNumber, temperatureText } from '../../../shared/format/numbers.js';
import type { Baseline } from '../../../shared/http/reads/baselines.js';
import { texts } from '../texts.js';

/** The ground and the air that a baseline is for, and what of the air nobody read. */
export function venueText(venue: NonNullable<Baseline['venue']>): string {
  const { isTemperatureAssumed, isPressureAssumed } = venue;
  const air = texts.air(temperatureText(venue.airTemperatureC), formatNumber(venue.stationPressureHpa));
  const isAssumed = isTemperatureAssumed && isPressureAssumed;
  const assumed = isTemperatureAssumed ? texts.temperatureAssumed : texts.pressureAssumed;
  const note = isAssumed ? texts.airAssumed : isTemperatureAssumed || isPressureAssumed ? assumed : '';
  return `${texts.forGround(venue.condition)}, ${air}${note}.`;
}
