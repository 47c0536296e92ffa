import { byFeel } from './advice/by-feel.js';
import { optimiser } from './advice/optimiser.js';
import { toolAdviser } from './advice/tool.js';
import type { Adviser, LoggedRun } from './contract.js';
import { SimulatedTeam, type Circumstances } from './truth/simulated-team.js';

/** Who advises, and what the team brings along. */
const CASES = {
  tool: { hasPast: true, matesRide: true, saysReserve: true },
  learned: { hasPast: true, matesRide: true, saysReserve: false },
  alone: { hasPast: true, matesRide: false, saysReserve: true },
  newTeam: { hasPast: false, matesRide: false, saysReserve: true },
  feel: { hasPast: false, matesRide: false, saysReserve: true },
  optimiser: { hasPast: false, matesRide: false, saysReserve: true },
} as const satisfies Record<string, Circumstances>;

export type CaseName = keyof typeof CASES;

/** How one team fared with one adviser. */
export interface TeamOutcome {
  readonly team: number;
  readonly caseName: CaseName;
  /** Miss of the best allowed set-up, m; null where none is allowed. */
  readonly leastMiss: number | null;
  /** Miss of the set-up held to be best after 0, 1, 2, … runs, m. */
  readonly misses: readonly number[];
  /** Miss of the set-up that is ridden next, m: on the way there, where a large change is ridden in steps. */
  readonly riddenMisses: readonly number[];
}

/** Lets a team follow an adviser, run after run. */
export function followAdvice(seed: number, index: number, caseName: CaseName, runs: number): TeamOutcome {
  const circumstances = CASES[caseName];
  const team = new SimulatedTeam(seed, index, runs);
  const advise = adviserOf(caseName, team);
  const logged: LoggedRun[] = [];
  let { next, best } = advise(logged);
  const misses = [team.miss(0, best)];
  const riddenMisses = [team.miss(0, next)];
  for (let run = 0; run < runs; run += 1) {
    logged.push(...team.ride(run, next, circumstances));
    ({ next, best } = advise(logged));
    misses.push(team.miss(run + 1, best));
    riddenMisses.push(team.miss(run + 1, next));
  }
  return { team: index, caseName, leastMiss: team.leastMiss(), misses, riddenMisses };
}

function adviserOf(caseName: CaseName, team: SimulatedTeam): Adviser {
  const records = team.records(CASES[caseName]);
  if (caseName === 'feel') return byFeel(records, team.wantedReserve);
  if (caseName === 'optimiser') return optimiser(records, team.wantedReserve);
  return toolAdviser(records);
}
