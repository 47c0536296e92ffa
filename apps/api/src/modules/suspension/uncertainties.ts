/*
 * Standard uncertainties of what the engine is given, for intervals. All are assumed, from common practice without a
 * source, unless a reason is named.
 */

/** Of a ring reading where none is given, m. */
export const DEFAULT_READING_SD = 0.002;
/** Of a shock pump's gauge, psi. */
export const GAUGE_SD_PSI = 1;
/** Of the sprung mass relative to itself: weight of the day, stance. */
export const RELATIVE_MASS_SD = 0.03;
/** The same where the load share was not weighed: 0.40 ± 0.02 of the total adds 5 % to the weight of the day. */
export const RELATIVE_MASS_SD_ASSUMED_SHARE = 0.06;

/** Of a figure of a unit relative to itself: where it was measured or entered, and where it is assumed. */
interface FigureSd {
  readonly known: number;
  readonly assumed: number;
}

/** Measured by the workshop procedure: about 1.4 %. Assumed: units of one travel differ by some 6 %. */
export const POSITIVE_VOLUME_SD: FigureSd = { known: 0.015, assumed: 0.06 };
/** Measured by equalising: ± 2.5 mL of some 30 mL. */
export const NEGATIVE_VOLUME_SD: FigureSd = { known: 0.08, assumed: 0.25 };
/** A spacer can be dipped into a measuring cup. */
export const SPACER_VOLUME_SD: FigureSd = { known: 0.02, assumed: 0.1 };
export const LOWER_LEG_VOLUME_SD: FigureSd = { known: 0.05, assumed: 0.2 };
/** Of the damper's slopes; changes with clicks, oil and its temperature. */
export const DAMPING_SD: FigureSd = { known: 0.1, assumed: 0.3 };
/** Changes with wear and grease. */
export const SEAL_FRICTION_SD: FigureSd = { known: 0.2, assumed: 0.5 };
