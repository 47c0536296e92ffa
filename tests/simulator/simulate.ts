import { readFileSync, writeFileSync } from 'node:fs';
import type { Job } from './jobs.js';
import { report, type PlanFigures } from './report.js';
import type { CaseName, TeamOutcome } from './set-up-study.js';
import { inThreads } from './threads.js';
import type { PlanCase, PlanOutcome } from './verdict-study.js';

/** The whole simulation: rides every team and every plan, and writes the figures into the page. */

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
const RUNS_AN_ARM = [4, 8, 16] as const;
/** Below zero: the tried set-up is faster. */
const DIFFERENCES = [0, -0.005, -0.01, -0.02, -0.03] as const;
const PAST_SESSIONS = 12;
/** Where nothing differs, the share of wrong verdicts is what matters: more plans. */
const plansOf = ({ difference }: PlanCase): number => (difference === 0 ? 2000 : 150);

const PLANS: readonly PlanCase[] = [
  ...DIFFERENCES.flatMap((difference) =>
    RUNS_AN_ARM.map((runsAnArm) => ({ riders: 1, runsAnArm, difference, pastSessions: PAST_SESSIONS })),
  ),
  ...RUNS_AN_ARM.map((runsAnArm) => ({ riders: 1, runsAnArm, difference: 0, pastSessions: 0 })),
];

const PAGE = new URL('../../docs/simulator.md', import.meta.url);
const BEGIN = '<!-- figures: npm run simulate -->';
const END = '<!-- end of figures -->';

const setUpJobs = (Object.keys(TEAMS) as CaseName[]).flatMap((caseName) =>
  Array.from({ length: TEAMS[caseName] }, (_, team): Job => ({
    kind: 'set-up',
    seed: SEED,
    caseName,
    team,
    runs: RUNS,
  })),
);
const planJobs = PLANS.flatMap((plan) =>
  Array.from({ length: plansOf(plan) }, (_, index): Job => ({ kind: 'plan', seed: SEED, plan, index })),
);

const results = await inThreads([...setUpJobs, ...planJobs]);
const teams = results.slice(0, setUpJobs.length) as TeamOutcome[];
const planned = results.slice(setUpJobs.length) as PlanOutcome[];
const plans = PLANS.map((plan): PlanFigures => ({
  plan,
  outcomes: planned.filter((_, i) => {
    const job = planJobs[i];
    return job?.kind === 'plan' && job.plan === plan;
  }),
}));

const page = readFileSync(PAGE, 'utf8');
const [before = '', rest = ''] = page.split(BEGIN);
const [, after = ''] = rest.split(END);
writeFileSync(PAGE, `${before}${BEGIN}\n\n${report(SEED, teams, RUNS, plans)}\n\n${END}${after}`);
