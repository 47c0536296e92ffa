import type { ComparisonRun, PlannedRun } from '@loamledger/evidence';
import type { SeededRandom } from '@loamledger/api/demo/random.js';
import { CURRENT } from '../contract.js';

/** What is true of a team's times, and never told. */
export interface TrueTimes {
  /** Log time of each tried set-up less that of the current one, over riders in general, by its name. */
  readonly differences: ReadonlyMap<string, number>;
  /** How far riders differ in what suits them: standard deviation of log time, each on each set-up. */
  readonly suitsSd: number;
  /** Chance that a run is void, on whatever set-up. */
  readonly voidShare: number;
}

/** Set-ups that are alike for everybody, and runs that all count. */
export const ALL_ALIKE: TrueTimes = { differences: new Map(), suitsSd: 0, voidShare: 0 };

/** Scatter of log time between runs alike in everything. */
const LOG_TIME_SD = 0.015;
/** Invented: how far one session's scatter is from another's, log. */
const LOG_SESSION_SD = 0.15;
/** Invented: lost on the first run of a session, of which each further run keeps a part. */
const LEARNING = { first: 0.03, kept: 0.55 } as const;
/** Invented, a run: tired hands and a drying or rutted track. */
const TIRING = { mean: 0.0006, sd: 0.0008 } as const;
const TRACK_TIME = 190;
const RIDER_LOG_SD = 0.04;
/** Invented: what a void run has lost, log. */
const VOID_LOSS = 0.08;

/** A rider on the day. */
interface Day {
  readonly pace: number;
  readonly tiring: number;
  readonly scatter: number;
  /** Log time that each set-up costs this rider beyond others. */
  readonly suits: ReadonlyMap<string, number>;
}

/** Times of the runs of a plan, each rider's session with its own pace, learning, tiring and scatter. */
export function timesOf(
  planned: readonly PlannedRun[],
  { differences, suitsSd, voidShare }: TrueTimes,
  session: string,
  random: SeededRandom,
): ComparisonRun[] {
  const arms = [...new Set(planned.map(({ arm }) => arm))].toSorted();
  const riders = new Map<string, Day>(
    [...new Set(planned.map(({ rider }) => rider))].map((rider) => [
      rider,
      {
        pace: random.normal(RIDER_LOG_SD),
        tiring: TIRING.mean + random.normal(TIRING.sd),
        scatter: LOG_TIME_SD * Math.exp(random.normal(LOG_SESSION_SD)),
        suits: new Map(suitsSd === 0 ? [] : arms.map((arm) => [arm, random.normal(suitsSd)])),
      },
    ]),
  );
  return planned.map(({ rider, arm, position }) => {
    const day = riders.get(rider) as Day;
    const learning = LEARNING.first * LEARNING.kept ** (position - 1);
    const logTime =
      day.pace +
      (arm === CURRENT ? 0 : (differences.get(arm) ?? 0)) +
      (day.suits.get(arm) ?? 0) +
      learning +
      day.tiring * position +
      random.normal(day.scatter);
    const voided = voidShare > 0 && random.chance(voidShare);
    const time = TRACK_TIME * Math.exp(logTime + (voided ? VOID_LOSS : 0));
    return { arm, rider, session, position, time, voided };
  });
}
