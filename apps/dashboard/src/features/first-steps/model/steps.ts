/** What a new team enters before its first baseline, in the order in which each rests on the one before. */
export const STEPS = ['rider', 'fork', 'shock', 'bike', 'track', 'setup', 'run'] as const;
export type StepName = (typeof STEPS)[number];

/** What of each step the team has, in words; null: nothing yet. */
export type Entered = Readonly<Record<StepName, string | null>>;

/** The step to do now: the first that is neither entered nor left out. Undefined: all is done. */
export const stepNow = (entered: Entered, leftOut: ReadonlySet<StepName>): StepName | undefined =>
  STEPS.find((step) => entered[step] === null && !leftOut.has(step));
