/** Whether runs may still be logged for a plan. */
export const PLAN_STATES = ['open', 'closed'] as const;
export type PlanState = (typeof PLAN_STATES)[number];
