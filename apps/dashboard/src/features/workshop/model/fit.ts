import type { DropTestAnswer } from '../api/drop-test.js';

/** Beyond so many standard uncertainties a set-up does not fit (5 in 100 by chance). */
const NOTABLE_RESIDUAL = 2;

/** Whether what was read at a set-up is what the fit predicts, within what a ring can tell. */
export const fits = ({ residual }: Pick<DropTestAnswer['setUps'][number], 'residual'>): boolean =>
  Math.abs(residual) <= NOTABLE_RESIDUAL;
