import type { ComparisonRun, PlannedRun } from '@loamledger/evidence';
import type { SeededRandom } from '@loamledger/api/demo/random.js';

/** What is true of a team's times, and never told. */
export interface TrueTimes {
  /** Log time of the tried set-up less that of the current one. */
  readonly difference: number;
}

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
const CURRENT = 'current';

/** Times of the runs of a plan, each rider's session with its own pace, learning, tiring and scatter. */
export function timesOf(
  planned: readonly PlannedRun[],
  { difference }: TrueTimes,
  session: string,
  random: SeededRandom,
): ComparisonRun[] {
  const riders = new Map(
    [...new Set(planned.map(({ rider }) => rider))].map((rider) => [
      rider,
      {
        pace: random.normal(RIDER_LOG_SD),
        tiring: TIRING.mean + random.normal(TIRING.sd),
        scatter: LOG_TIME_SD * Math.exp(random.normal(LOG_SESSION_SD)),
      },
    ]),
  );
  return planned.map(({ rider, arm, position }) => {
    const day = riders.get(rider) ?? { pace: 0, tiring: 0, scatter: 0 };
    const learning = LEARNING.first * LEARNING.kept ** (position - 1);
    const logTime =
      day.pace +
      (arm === CURRENT ? 0 : difference) +
      learning +
      day.tiring * position +
      random.normal(day.scatter);
    return { arm, rider, session, position, time: TRACK_TIME * Math.exp(logTime), voided: false };
  });
}
