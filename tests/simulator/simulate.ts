import { readFileSync, writeFileSync } from 'node:fs';
import type { Job } from './jobs.js';
import { PLANS_OF_ONE, PLANS_OF_SEVERAL, PLANS_OF_SEVERAL_ALIKE, plansOf } from './plan-cases.js';
import { setUpReport } from './set-up-report.js';
import type { CaseName, TeamOutcome } from './set-up-study.js';
import { inThreads } from './threads.js';
import { verdictReport, type PlanFigures } from './verdict-report.js';
import type { PlanCase, PlanOutcome } from './verdict-study.js';

/** The whole simulation: rides every team and every plan, or one of the two studies, and writes the figures into the page. */

/** Drawn by chance after rows, columns, numbers of teams and the tool were fixed; not changed to get other figures. */
const SEED = 157_162;
const RUNS = 14;
const TEAMS: Record<CaseName, number> = {
  tool: 600,
  learned: 150,
  alone: 150,
  newTeam: 150,
  feel: 300,
  optimiser: 150,
};
const PLANS = [...PLANS_OF_ONE, ...PLANS_OF_SEVERAL_ALIKE, ...PLANS_OF_SEVERAL];
const PAGE = new URL('../../docs/simulator.md', import.meta.url);

/** Each study writes its own part of the page. */
const STUDIES = { 'set-ups': rideTeams, verdicts: ridePlans } as const;

async function rideTeams(): Promise<string> {
  const jobs = (Object.keys(TEAMS) as CaseName[]).flatMap((caseName) =>
    Array.from({ length: TEAMS[caseName] }, (_, team): Job => ({
      kind: 'set-up',
      seed: SEED,
      caseName,
      team,
      runs: RUNS,
    })),
  );
  return setUpReport(SEED, (await inThreads(jobs)) as TeamOutcome[], RUNS);
}

async function ridePlans(): Promise<string> {
  const ridden = PLANS.flatMap((plan) =>
    Array.from({ length: plansOf(plan) }, (_, index) => ({ plan, index })),
  );
  const jobs = ridden.map((one): Job => ({ kind: 'plan', seed: SEED, ...one }));
  const outcomes = (await inThreads(jobs)) as PlanOutcome[];
  const figuresOf = (plans: readonly PlanCase[]): PlanFigures[] =>
    plans.map((plan) => ({ plan, outcomes: outcomes.filter((_, i) => ridden[i]?.plan === plan) }));
  return verdictReport(SEED, {
    ofOne: figuresOf(PLANS_OF_ONE),
    alike: figuresOf(PLANS_OF_SEVERAL_ALIKE),
    different: figuresOf(PLANS_OF_SEVERAL),
  });
}

function write(study: string, figures: string): void {
  const begin = `<!-- ${study}: npm run simulate -->`;
  const end = `<!-- end of ${study} -->`;
  const page = readFileSync(PAGE, 'utf8');
  const [from, to] = [page.indexOf(begin), page.indexOf(end)];
  if (from < 0 || to < from) throw new Error(`docs/simulator.md has no part between ${begin} and ${end}.`);
  writeFileSync(PAGE, `${page.slice(0, from)}${begin}\n\n${figures}\n\n${page.slice(to)}`);
}

const [wanted] = process.argv.slice(2);
const names = Object.keys(STUDIES) as (keyof typeof STUDIES)[];
const chosen = names.filter((name) => wanted === undefined || name === wanted);
if (chosen.length === 0) throw new Error(`There is no study '${wanted}': ${names.join(', ')}.`);
for (const name of chosen) write(name, await STUDIES[name]());
