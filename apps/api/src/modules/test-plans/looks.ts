/**
 * When the times of a plan are looked at: once, when it is closed, or after every block (each rider on each arm once
 * more). Agreed before the first run, because every look spends a part of the error rate.
 */
export const LOOKS = ['at the end', 'after every block'] as const;
export type Looks = (typeof LOOKS)[number];
