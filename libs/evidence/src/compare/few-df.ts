/** With fewer degrees of freedom a t quantile is above 4 and says more about the table than about the set-ups (judgement). */
export const FEWEST_DF = 3;

/** Whether there are too few for a verdict, rounded: a lost run makes 2.9 of 3, and that is no other question. */
export const tooFewDf = (df: number): boolean => Math.round(df) < FEWEST_DF;
