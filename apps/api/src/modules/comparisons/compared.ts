import type { Run } from '../runs/stored-runs.js';
import { comparisonRun } from '../scatter/comparison-run.js';
import type { Plan } from '../test-plans/plan-answer.js';
import type { ComparedDto } from './comparison-arm.dto.js';
import type { ComparisonWish, RatedRun } from './compute-comparison.js';
import type { PlanLook } from './plan-look.js';

/** Arms of a plan by their letters. */
export const shownArm =
  ({ arms }: Plan) =>
  (letter: string): ComparedDto => ({
    letter,
    name: arms.find((arm) => arm.letter === letter)?.name ?? null,
    setupId: null,
  });

/** Set-ups by their ids. */
export const shownSetup = (setupId: string): ComparedDto => ({ letter: null, name: null, setupId });

/** A run with its ratings, on the arm of that name. */
export const ratedRun = (run: Run, arm: string): RatedRun => ({
  ...comparisonRun(run),
  arm,
  id: run.id,
  ratings: {
    support: run.supportRating,
    comfort: run.comfortRating,
    rideHeight: run.rideHeightRating,
    fatigue: run.fatigueRating,
  },
});

/** What a look at a plan compares. */
export const wishOf = ({ row, arms }: Plan, look: PlanLook): Omit<ComparisonWish, 'pastRuns'> => ({
  runs: look.runs.map(({ run, letter }) => ratedRun(run, letter)),
  current: currentLetter({ arms }),
  margin: row.margin,
  trend: row.trend,
  look: look.look,
});

/** The arm that the others are compared with. */
export const currentLetter = ({ arms }: Pick<Plan, 'arms'>): string =>
  arms.find(({ current }) => current)?.letter ?? '';
