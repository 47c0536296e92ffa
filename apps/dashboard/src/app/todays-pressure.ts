import { pressureAtVenue } from '@loamledger/spring';
import { gaugePascalFromPsi, psiFromGaugePascal } from '@loamledger/units';
import { ambientOf, type TodaysAir } from '../features/ride/model/todays-air.js';
import type { TodaysPressure } from '../features/ride/model/todays-pressure.js';
import type { BikeEnd } from '../features/workbench/api/bike-ends.js';
import type { pumpTo as PumpTo } from './pump-to.js';
import type { EndSetup, Setup } from '../shared/http/reads/setups.js';

/** The engine's part comes only for who needs it: for a set-up that was filled elsewhere. */
const engine = () => import('./pump-to.js');
let loaded: ReturnType<typeof engine> | undefined;

/** Whether the set-up was filled somewhere else than at the track. */
export const isFilledElsewhere = ({ filledAltitudeM, filledTemperatureC }: Setup) =>
  filledAltitudeM !== null && filledTemperatureC !== null;

/** The engine's question, to be read with `use`. */
export const pumpToQuestion = (): ReturnType<typeof engine> => (loaded ??= engine());

/**
 * The pressure of an end in today's air; undefined while that is not known. Null where the set-up does not say where it
 * was filled: then it was pumped at the track, and nothing has to be corrected.
 */
export function todaysPressure(
  setup: Setup,
  fill: EndSetup,
  end: BikeEnd | null | undefined,
  today: TodaysAir | undefined,
  pumpTo: typeof PumpTo | null,
): TodaysPressure | null | undefined {
  const { filledAltitudeM, filledTemperatureC } = setup;
  if (filledAltitudeM === null || filledTemperatureC === null) return null;
  if (today === undefined) return undefined;
  const there = ambientOf({ altitudeM: filledAltitudeM, temperatureC: filledTemperatureC });
  const here = ambientOf(today);
  const filled = gaugePascalFromPsi(fill.pressurePsi);
  return {
    leftAlonePsi: psiFromGaugePascal(pressureAtVenue(filled, there, here)),
    pumpToPsi: end == null || pumpTo === null ? null : pumpTo(end, fill, there, here),
    filledAltitudeM,
    filledTemperatureC,
  };
}
