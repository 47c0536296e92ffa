/** Wishes where a rider has entered none. Common practice, no source. */
export const USUAL_WISHES = {
  acceptedRiskPct: 5,
  fork: { sagLowPct: 15, sagHighPct: 20, reservePct: 6 },
  shock: { sagLowPct: 25, sagHighPct: 30, reservePct: 6 },
} as const;
