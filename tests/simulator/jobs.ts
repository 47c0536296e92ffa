import { followAdvice, type CaseName, type TeamOutcome } from './set-up-study.js';
import { ridePlan, type PlanCase, type PlanOutcome } from './verdict-study.js';

/** A part of the simulation that one thread does. */
export type Job =
  | {
      readonly kind: 'set-up';
      readonly seed: number;
      readonly caseName: CaseName;
      readonly team: number;
      readonly runs: number;
    }
  | { readonly kind: 'plan'; readonly seed: number; readonly plan: PlanCase; readonly index: number };

export type JobResult = TeamOutcome | PlanOutcome;

/** Does one part. */
export function doJob(job: Job): JobResult {
  return job.kind === 'set-up'
    ? followAdvice(job.seed, job.team, job.caseName, job.runs)
    : ridePlan(job.seed, job.index, job.plan);
}
