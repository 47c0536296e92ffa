import type { TimedRun } from '../../libs/evidence/src/compare/time-model.js';
import { reference } from './evidence-reference.js';

/** Five riders on four set-ups, and what of its results a test uses. */
export function teamTrend<Result>(): { readonly runs: TimedRun[]; readonly result: Result } {
  const { data, result } = reference<{
    data: { rider: string[]; run: number[]; setup: string[]; time_s: number[] };
    result: Result;
  }>('team_trend_example');
  const runs = data.time_s.map((time, i): TimedRun => ({
    arm: data.setup[i] as string,
    rider: data.rider[i] as string,
    session: 'one',
    position: data.run[i] as number,
    time,
    voided: false,
  }));
  return { runs, result };
}
