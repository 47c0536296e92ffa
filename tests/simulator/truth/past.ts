import type { SeededRandom } from '@loamledger/api/demo/random.js';
import { engineEnd } from '@loamledger/api/suspension/end-inputs.js';
import { pressureForSag } from '@loamledger/spring';
import { psiFromGaugePascal } from '@loamledger/units';
import { SAG_BAND, type KeptSetUp, type LoggedRun, type SetUp } from '../contract.js';
import { allowedSetUps, endInputsOf } from '../fork-end.js';
import { drawChance, ride, trueReserve } from './riding.js';
import type { TrueRider, TrueTeam, TrueTrack } from './true-team.js';

/** What a team has behind it. */
export interface Past {
  readonly runs: readonly LoggedRun[];
  readonly kept: readonly KeptSetUp[];
}

/** How often each rider rode a track before: on a set-up to begin with, then on the one that was kept. */
const RUNS_BEFORE_KEEPING = 3;
const RUNS_KEPT = 3;
/** Invented, m: how far what a rider keeps leaves from what the same rider wants. */
const KEPT_SD = 0.004;
/** Invented: a fork begins with one of these numbers of spacers. */
const FIRST_SPACERS = [0, 1, 2] as const;
/** A pressure that no limit of a fork excludes, psi; replaced at once. */
const ANY_PRESSURE = 70;

/** The riders' earlier tracks: every run there, and the set-ups that they kept. */
export function earlierTracks(team: TrueTeam, random: SeededRandom): Past {
  const stays = team.tracks
    .slice(1)
    .flatMap((track) => team.riders.map((rider) => stay(team, rider, track, random)));
  return { runs: stays.flatMap(({ runs }) => runs), kept: stays.flatMap(({ kept }) => kept) };
}

/** Runs of the other riders on the track in question, one each for every run of the rider's, on one set-up each. */
export function matesHere(team: TrueTeam, rounds: number, random: SeededRandom): LoggedRun[][] {
  const [track] = team.tracks;
  const mates = team.riders.slice(1).map((mate) => ({ mate, setUp: firstSetUp(mate, track, random) }));
  return Array.from({ length: rounds }, () =>
    mates.map(({ mate, setUp }) => ride(team, mate, track, setUp, drawChance(random))),
  );
}

function stay(team: TrueTeam, rider: TrueRider, track: TrueTrack, random: SeededRandom): Past {
  const first = firstSetUp(rider, track, random);
  const felt = rider.wantedReserve + random.normal(KEPT_SD);
  const kept = nearestTo(felt, team, rider, track) ?? first;
  const ridden = [
    ...new Array<SetUp>(RUNS_BEFORE_KEEPING).fill(first),
    ...new Array<SetUp>(RUNS_KEPT).fill(kept),
  ];
  return {
    runs: ridden.map((setUp) => ride(team, rider, track, setUp, drawChance(random))),
    kept: [{ riderId: rider.id, trackId: track.id, setUp: kept }],
  };
}

/** What a shop would set: few spacers, and the pressure for a sag in the middle of the band by the fork's figures. */
export function firstSetUp(rider: TrueRider, track: TrueTrack, random: SeededRandom): SetUp {
  const spacers = random.pick(FIRST_SPACERS);
  const inputs = endInputsOf(rider.entered, { pressure: ANY_PRESSURE, spacers }, track.altitude);
  const { spring, end } = engineEnd(inputs);
  const answer = pressureForSag(spring.unit, spring.fill, end, (SAG_BAND.min + SAG_BAND.max) / 2);
  const wanted =
    answer.status === 'found' ? Math.round(psiFromGaugePascal(answer.gaugePressure)) : ANY_PRESSURE;
  const { minPressure, maxPressure } = rider.entered;
  return { pressure: Math.min(maxPressure, Math.max(minPressure, wanted)), spacers };
}

/** The allowed set-up that really leaves what is nearest to `reserve`; undefined where none is allowed. */
export function nearestTo(
  reserve: number,
  team: TrueTeam,
  rider: TrueRider,
  track: TrueTrack,
): SetUp | undefined {
  const missOf = (setUp: SetUp): number => Math.abs(trueReserve(team, rider, track, setUp, 0) - reserve);
  return allowedSetUps(rider.actual, track.altitude)
    .map((setUp) => ({ setUp, miss: missOf(setUp) }))
    .toSorted((a, b) => a.miss - b.miss)[0]?.setUp;
}
