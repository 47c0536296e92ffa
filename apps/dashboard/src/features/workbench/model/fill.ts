/** What is in a unit: gauge pressure at full extension, and volume spacers. */
export interface Fill {
  readonly pressurePsi: number;
  readonly spacers: number;
}

export type FillField = keyof Fill;

/** The finest that a pump's gauge shows, psi. */
const GAUGE_STEP_PSI = 0.1;

/** Whether a gauge and an eye would find the same in both. */
export const isSameFill = (a: Fill, b: Fill) =>
  a.spacers === b.spacers && Math.abs(a.pressurePsi - b.pressurePsi) < GAUGE_STEP_PSI / 2;
