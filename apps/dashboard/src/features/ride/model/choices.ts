export const CONDITIONS = ['dry', 'damp', 'wet', 'muddy', 'dusty'] as const;
export type Condition = (typeof CONDITIONS)[number];

/** What a rider rates after a run, 1 to 5. */
export const RATINGS = ['support', 'comfort', 'rideHeight', 'fatigue'] as const;
export type Rating = (typeof RATINGS)[number];
