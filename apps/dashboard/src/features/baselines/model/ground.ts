import type { Ground } from '../../../shared/http/reads/baselines.js';

/** States of the ground that a forecast can be for. */
export const GROUNDS = ['dry', 'damp', 'wet', 'muddy', 'dusty'] as const satisfies readonly Ground[];

/** The ground that a word in an address means; none, or one that nobody knows, is dry. */
export const groundOf = (word: string | undefined): Ground =>
  GROUNDS.find((known) => known === word) ?? 'dry';
