export const CONDITIONS = ['dry', 'damp', 'wet', 'muddy', 'dusty'] as const;
/** State of the ground. */
export type Condition = (typeof CONDITIONS)[number];
