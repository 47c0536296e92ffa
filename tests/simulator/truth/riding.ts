import { engineEnd } from '@loamledger/api/suspension/end-inputs.js';
import type { SeededRandom } from '@loamledger/api/demo/random.js';
import { travelForHeight } from '@loamledger/spring';
import { RING_SD, type LoggedRun, type SetUp } from '../contract.js';
import { endInputsOf } from '../fork-end.js';
import type { TrueRider, TrueTeam, TrueTrack } from './true-team.js';

/** Chance of one run: the same for all advisers, so that they differ by their advice alone. */
export interface RunChance {
  /** How much harder than usual the biggest hit is, log height. */
  readonly hit: number;
  /** Error of the ring reading, m. */
  readonly ring: number;
  /** What is really in the fork beyond what the gauge showed, psi. */
  readonly gauge: number;
}

const LOG_HIT_SD = 0.2;
const GAUGE_SD = 1;
const READ_TO = 0.001;
/** Normal quantile of 95 %. */
const NORMAL_95 = 1.6448536269514722;

export function drawChance(random: SeededRandom): RunChance {
  return { hit: random.normal(LOG_HIT_SD), ring: random.normal(RING_SD), gauge: random.normal(GAUGE_SD) };
}

/** One run: a hit, the travel it really uses, and what is read off the ring to a millimetre. */
export function ride(
  team: TrueTeam,
  rider: TrueRider,
  track: TrueTrack,
  setUp: SetUp,
  chance: RunChance,
): LoggedRun {
  const used = trueTravel(rider, track, setUp, chance.gauge, usualHit(team, rider, track) + chance.hit);
  const read = Math.round((used + chance.ring) / READ_TO) * READ_TO;
  const travelUsed = Math.min(rider.entered.unit.stroke, Math.max(0, read));
  return { riderId: rider.id, trackId: track.id, setUp, travelUsed };
}

/** Travel that is really left on the hardest run in twenty, m. */
export function trueReserve(
  team: TrueTeam,
  rider: TrueRider,
  track: TrueTrack,
  setUp: SetUp,
  gaugeError: number,
): number {
  const hardHit = usualHit(team, rider, track) + NORMAL_95 * LOG_HIT_SD;
  return rider.actual.unit.stroke - trueTravel(rider, track, setUp, gaugeError, hardHit);
}

/** Log of the median height of a rider's biggest hit on a track. */
const usualHit = (team: TrueTeam, rider: TrueRider, track: TrueTrack): number =>
  track.logMedianHit + rider.severity + team.habit(rider, track);

function trueTravel(
  rider: TrueRider,
  track: TrueTrack,
  setUp: SetUp,
  gaugeError: number,
  logHit: number,
): number {
  const filled = { ...setUp, pressure: setUp.pressure + gaugeError };
  const { spring, end } = engineEnd(endInputsOf(rider.actual, filled, track.altitude));
  return travelForHeight(spring, end, Math.exp(logHit)).travel;
}
