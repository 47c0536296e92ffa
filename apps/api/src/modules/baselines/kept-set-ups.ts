import { sag, SpringInputError, springStiffness, travelForHeight } from '@loamledger/spring';
import type { Bike } from '../bikes/bikes.service.js';
import type { TeamDemand } from '../demand/demand.service.js';
import { hitForecast } from '../demand/forecast.js';
import type { Rider } from '../riders/riders.service.js';
import { fillOf, filledAtOf } from '../setups/setup-fill.js';
import type { Setup } from '../setups/setups.service.js';
import type { SpringUnit } from '../spring-units/spring-units.service.js';
import { ambientAt, endInputs, type End } from '../suspension/end-inputs.js';
import type { Track } from '../tracks/tracks.service.js';
import { HIGHEST_DROP, toFill, travelUnderBraking } from './end-candidates.js';

/** A decision whose set-up was kept, with the records behind it. Plain data. */
export interface KeptRecords {
  readonly decisionId: string;
  readonly bike: Bike;
  readonly rider: Rider;
  readonly setup: Setup;
  /** The units that the set-up was made for. */
  readonly units: Readonly<Record<End, SpringUnit | null>>;
  /** The track it was decided for, if for one. */
  readonly track: Track | null;
}

/** Clicks from fully closed; null: not recorded. */
export interface Clicks {
  readonly rebound: number | null;
  readonly compression: number | null;
}

/** One end of a kept set-up, by the engine and the demand model as they are now; SI units. */
export interface KeptEnd {
  readonly riderId: string;
  readonly bikeId: string;
  readonly unitId: string;
  readonly setupId: string;
  readonly clicks: Clicks;
  /** Shares of the stroke. */
  readonly sag: number;
  /** At the 95th-percentile hit of its rider on its track; null where it was decided for no track. */
  readonly reserve: number | null;
  /** At sag, N/m. */
  readonly sagStiffness: number;
  /** In the reference braking, m; undefined for a shock, and where the rear wheel would lift. */
  readonly brakingTravel: number | undefined;
}

/** Air where a set-up was decided for no track: at sea level. */
const NO_ALTITUDE = 0;

export const clicksOf = (end: End, setup: Setup): Clicks =>
  end === 'fork'
    ? { rebound: setup.forkRebound, compression: setup.forkCompression }
    : { rebound: setup.shockRebound, compression: setup.shockCompression };

/** This end of every kept set-up that has one, on dry ground in the standard atmosphere of its track. */
export function keptEnds(end: End, kept: readonly KeptRecords[], { fit }: TeamDemand): KeptEnd[] {
  return kept.flatMap((records) => {
    const { bike, rider, setup, track } = records;
    const unit = records.units[end];
    if (!unit || (end === 'shock' && !bike.leverageTable)) return [];
    const ambient = ambientAt(track?.altitude ?? NO_ALTITUDE, {
      airTemperature: null,
      stationPressure: null,
    });
    const fill = fillOf(end, setup);
    const inputs = endInputs(end, { unit, bike, rider, fill, filledAt: filledAtOf(setup), ambient });
    const hit = track && hitForecast(fit, { riderId: rider.id, trackId: track.id }).p95;
    return unlessImpossible(() => {
      const { spring, end: sprungEnd, bike: brakingBike } = toFill(end, inputs, bike, rider);
      const settled = sag(spring, sprungEnd);
      const used =
        hit === null ? null : travelForHeight(spring, sprungEnd, Math.min(hit, HIGHEST_DROP)).travel;
      return {
        riderId: rider.id,
        bikeId: bike.id,
        unitId: unit.id,
        setupId: setup.id,
        clicks: clicksOf(end, setup),
        sag: settled.fraction,
        reserve: used === null ? null : 1 - used / spring.stroke,
        sagStiffness: springStiffness(spring, settled.travel),
        brakingTravel: brakingBike && travelUnderBraking(spring, brakingBike),
      };
    });
  });
}

/** A unit that was measured anew may no longer take a fill that was kept once: that one tells nothing any more. */
function unlessImpossible<Answer>(work: () => Answer): Answer[] {
  try {
    return [work()];
  } catch (error) {
    if (error instanceof SpringInputError) return [];
    throw error;
  }
}
