import { assumedTemperature, standardAtmosphere, type Ambient } from '@loamledger/spring';
import { celsiusFromKelvin, kelvinFromCelsius } from '@loamledger/units';

/** The air at the track today. */
export interface TodaysAir {
  readonly altitudeM: number;
  readonly temperatureC: number;
  /** Nobody has typed the temperature: it is that of the standard atmosphere at this altitude. */
  readonly isAssumed: boolean;
}

/** The typed temperature, or the standard one of the altitude. */
export function airToday(altitudeM: number, typedC: number | null): TodaysAir {
  const temperatureC = typedC ?? celsiusFromKelvin(assumedTemperature(altitudeM));
  return { altitudeM, temperatureC, isAssumed: typedC === null };
}

/** The air of a place as the engine takes it. */
export const ambientOf = ({ altitudeM, temperatureC }: Omit<TodaysAir, 'isAssumed'>): Ambient => ({
  pressure: standardAtmosphere(altitudeM).pressure,
  temperature: kelvinFromCelsius(temperatureC),
});
