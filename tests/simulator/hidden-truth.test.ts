import { describe, expect, it } from 'vitest';
import { toolAdviser } from './advice/tool.js';
import { planFor, verdictsOn } from './advice/verdicts.js';
import type { LoggedRun } from './contract.js';
import { stream } from './streams.js';
import { timesOf } from './truth/sessions.js';
import { SimulatedTeam } from './truth/simulated-team.js';

const SEED = 5;
const RUNS = 2;
const CIRCUMSTANCES = { hasPast: true, matesRide: true, saysReserve: false } as const;

/** Everything that ever passed from a team to its adviser, as text: no object of the truth can hide in it. */
function followed(index: number) {
  const team = new SimulatedTeam(SEED, index, RUNS);
  const records = team.records(CIRCUMSTANCES);
  const advise = toolAdviser(records);
  const logged: LoggedRun[] = [];
  const advised = [advise(logged)];
  for (let run = 0; run < RUNS; run += 1) {
    logged.push(...team.ride(run, advised.at(-1)?.next ?? records.startSetUp, CIRCUMSTANCES));
    advised.push(advise(logged));
  }
  const { forks, altitudes, ...rest } = records;
  return {
    advised,
    written: JSON.stringify({ ...rest, forks: [...forks], altitudes: [...altitudes], logged }),
    team,
  };
}

describe('the hidden truth', () => {
  it('stays hidden: what was written down alone leads to the same advice', () => {
    const { advised, written } = followed(0);
    const { forks, altitudes, logged, ...rest } = JSON.parse(written);
    const advise = toolAdviser({ ...rest, forks: new Map(forks), altitudes: new Map(altitudes) });
    const roundLength = logged.length / RUNS;
    const again = advised.map((_, run) => advise(logged.slice(0, run * roundLength)));
    expect(again).toEqual(advised);
  });

  it('is in nothing that is written down: no shape carries more than its fields', () => {
    const { written } = followed(1);
    const { forks, logged, pastRuns, kept } = JSON.parse(written);
    const fields = (items: object[]): string[] => [...new Set(items.flatMap(Object.keys))].toSorted();
    expect(fields([...logged, ...pastRuns])).toEqual(['riderId', 'setUp', 'trackId', 'travelUsed']);
    expect(fields(kept)).toEqual(['riderId', 'setUp', 'trackId']);
    expect(fields(forks.map(([, fork]: [string, object]) => fork))).toEqual([
      'leverage',
      'maxPressure',
      'maxSpacers',
      'minPressure',
      'sprungMass',
      'unit',
    ]);
  });

  it('is the same for the same seed and another for another team', () => {
    expect(followed(2).written).toBe(followed(2).written);
    expect(followed(2).written).not.toBe(followed(3).written);
  });

  it('stays hidden in the times of a plan: nothing but the runs as they are logged leads to the verdicts', () => {
    const plan = planFor(['one', 'two', 'three'], ['tried 1', 'tried 2'], 4, SEED);
    const truth = { differences: new Map([['tried 1', -0.02]]), suitsSd: 0.005, voidShare: 0.1 };
    const runs = timesOf(plan.runs, truth, 'today', stream(SEED, 0, 0));
    const fields = [...new Set(runs.flatMap(Object.keys))].toSorted();
    expect(fields).toEqual(['arm', 'position', 'rider', 'session', 'time', 'voided']);
    const written = JSON.parse(JSON.stringify(runs)) as typeof runs;
    expect(verdictsOn(written, [], null)).toEqual(verdictsOn(runs, [], null));
    expect(runs.some(({ voided }) => voided)).toBe(true);
  });
});
