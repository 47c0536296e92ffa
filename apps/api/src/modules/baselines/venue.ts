import { REFERENCE_CONDITION } from '@loamledger/evidence';
import {
  absolutePascalFromHectopascal,
  celsiusFromKelvin,
  hectopascalFromAbsolutePascal,
  kelvinFromCelsius,
} from '@loamledger/units';
import type { Condition } from '../sessions/conditions.js';
import { ambientAt } from '../suspension/end-inputs.js';
import type { BaselineListQuery, VenueDto } from './baselines.dto.js';

/** The ground and the air that a baseline is for. */
export interface Venue {
  readonly condition: Condition;
  /** K; null: from the altitude by the standard atmosphere. */
  readonly airTemperature: number | null;
  /** Absolute, Pa; null: from the altitude by the standard atmosphere. */
  readonly stationPressure: number | null;
}

/** What is asked for; dry ground where none is named, as track levels are given for it. */
export const venueOf = (
  query: Pick<BaselineListQuery, 'condition' | 'airTemperatureC' | 'stationPressureHpa'>,
): Venue => ({
  condition: query.condition ?? REFERENCE_CONDITION,
  airTemperature: query.airTemperatureC === undefined ? null : kelvinFromCelsius(query.airTemperatureC),
  stationPressure:
    query.stationPressureHpa === undefined ? null : absolutePascalFromHectopascal(query.stationPressureHpa),
});

/** The venue as a message: the air that was computed with, and what of it nobody read. */
export function venueAnswer(altitude: number, venue: Venue): VenueDto {
  const air = ambientAt(altitude, venue);
  return {
    condition: venue.condition,
    airTemperatureC: celsiusFromKelvin(air.temperature),
    isTemperatureAssumed: venue.airTemperature === null,
    stationPressureHpa: hectopascalFromAbsolutePascal(air.pressure),
    isPressureAssumed: venue.stationPressure === null,
  };
}
