import type { LoggedRun, SetUp, TeamRecords } from '../contract.js';
import { stream } from '../streams.js';
import { earlierTracks, firstSetUp, matesHere, nearestTo } from './past.js';
import { drawChance, ride, trueReserve, type RunChance } from './riding.js';
import { drawTeam, type TrueRider, type TrueTeam, type TrueTrack } from './true-team.js';

/** What a team brings to the track beside its forks. */
export interface Circumstances {
  /** Whether it has ridden other tracks, and kept set-ups there. */
  readonly hasPast: boolean;
  /** Whether the other riders ride this track with the rider, run for run. */
  readonly matesRide: boolean;
  /** Whether the rider has said what reserve they want. */
  readonly saysReserve: boolean;
}

const PURPOSE = { team: 0, past: 1, mates: 2, start: 3, runs: 4 } as const;
const MILLIMETRES = 1000;

/** A team whose truth stays inside: outside are its records, its runs, and how far a set-up is from what is wanted. */
export class SimulatedTeam {
  private readonly team: TrueTeam;
  private readonly rider: TrueRider;
  private readonly track: TrueTrack;
  private readonly chances: readonly RunChance[];
  private readonly mates: readonly (readonly LoggedRun[])[];
  private readonly startSetUp: SetUp;

  constructor(
    private readonly seed: number,
    private readonly index: number,
    runs: number,
  ) {
    this.team = drawTeam(stream(seed, index, PURPOSE.team));
    [this.rider] = this.team.riders;
    [this.track] = this.team.tracks;
    const chance = stream(seed, index, PURPOSE.runs);
    // One more: the fill that the set-up after the last run is judged with.
    this.chances = Array.from({ length: runs + 1 }, () => drawChance(chance));
    this.mates = matesHere(this.team, runs, stream(seed, index, PURPOSE.mates));
    this.startSetUp = firstSetUp(this.rider, this.track, stream(seed, index, PURPOSE.start));
  }

  /** What the team has written down. */
  records({ hasPast, saysReserve }: Circumstances): TeamRecords {
    const { team, seed, index } = this;
    const past = hasPast ? earlierTracks(team, stream(seed, index, PURPOSE.past)) : { runs: [], kept: [] };
    return {
      riderId: this.rider.id,
      trackId: this.track.id,
      forks: new Map(team.riders.map(({ id, entered }) => [id, entered])),
      altitudes: new Map(team.tracks.map(({ id, altitude }) => [id, altitude])),
      pastRuns: past.runs,
      kept: past.kept,
      saidReserve: saysReserve ? Math.round(this.wantedReserve * MILLIMETRES) / MILLIMETRES : null,
      startSetUp: this.startSetUp,
    };
  }

  /** What the rider wants left, m: nothing but their own feel may be told of it. */
  get wantedReserve(): number {
    return this.rider.wantedReserve;
  }

  /** Run number `run` (from 0): the rider's on a set-up, and those of the mates who ride too. */
  ride(run: number, setUp: SetUp, { matesRide }: Circumstances): LoggedRun[] {
    const own = ride(this.team, this.rider, this.track, setUp, this.chance(run));
    return matesRide ? [own, ...(this.mates[run] ?? [])] : [own];
  }

  /** How far off the wanted reserve a set-up is as it is filled for run number `run`, m. */
  miss(run: number, setUp: SetUp): number {
    return Math.abs(
      trueReserve(this.team, this.rider, this.track, setUp, this.chance(run).gauge) - this.wantedReserve,
    );
  }

  /** How far off the best of all allowed set-ups is, filled without error, m; null where none is allowed. */
  leastMiss(): number | null {
    const { team, rider, track, wantedReserve } = this;
    const best = nearestTo(wantedReserve, team, rider, track);
    return best ? Math.abs(trueReserve(team, rider, track, best, 0) - wantedReserve) : null;
  }

  private chance(run: number): RunChance {
    return this.chances[run] as RunChance;
  }
}
