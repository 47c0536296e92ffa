/** A straight axis from data to pixels. */
export interface Axis {
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly number[];
}

/** Round steps of a decade. */
const STEPS = [1, 2, 5, 10];

/** Digits of a tick, without the noise of binary fractions; and the part of a step that counts as none. */
const TICK_DIGITS = 12;
const ROUNDING = 1e-9;

/** An axis from 0, or from below it where the data go there, to the next round figure, with about `count` ticks. */
export function axisOver(least: number, most: number, count: number): Axis {
  const span = Math.max(most, 0) - Math.min(least, 0);
  if (!(span > 0) || !Number.isFinite(span)) return { from: 0, to: 1, ticks: [0, 1] };
  const rough = span / count;
  const decade = 10 ** Math.floor(Math.log10(rough));
  const step = (STEPS.find((factor) => factor * decade >= rough * (1 - ROUNDING)) ?? 10) * decade;
  const first = Math.floor(Math.min(least, 0) / step + ROUNDING);
  const last = Math.ceil(Math.max(most, 0) / step - ROUNDING);
  const ticks = Array.from({ length: last - first + 1 }, (_, i) =>
    Number(((first + i) * step).toPrecision(TICK_DIGITS)),
  );
  return { from: ticks[0] ?? 0, to: ticks.at(-1) ?? 1, ticks };
}

/** Pixels along an axis of the given length; beyond its ends where the value is. */
export const alongAxis = ({ from, to }: Pick<Axis, 'from' | 'to'>, value: number, lengthPx: number) =>
  ((value - from) / (to - from)) * lengthPx;

/** Millimetre figures from 0 to the stroke, which has its own figure at the end. */
export function strokeTicks(strokeMm: number, count: number): number[] {
  const { ticks } = axisOver(0, strokeMm, count);
  const step = (ticks[1] ?? strokeMm) - (ticks[0] ?? 0);
  return [...ticks.filter((mm) => mm <= strokeMm - step / 2), strokeMm];
}
