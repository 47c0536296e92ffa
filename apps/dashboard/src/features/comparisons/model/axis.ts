/** A straight axis from data to pixels. */
export interface Axis {
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly number[];
}

/** Round steps of a decade. */
const STEPS = [1, 2, 5, 10];
/** Digits of a tick, without the noise of binary fractions. */
const TICK_DIGITS = 12;

/** An axis from a round figure below the data to one above, with about `count` ticks. */
export function axisBetween(least: number, most: number, count: number): Axis {
  const span = most > least ? most - least : Math.max(Math.abs(most), 1);
  const rough = span / count;
  const decade = 10 ** Math.floor(Math.log10(rough));
  const step = (STEPS.find((factor) => factor * decade >= rough) ?? 10) * decade;
  const first = Math.floor(least / step);
  const last = Math.max(first + 1, Math.ceil(most / step));
  const ticks = Array.from({ length: last - first + 1 }, (_, i) =>
    Number(((first + i) * step).toPrecision(TICK_DIGITS)),
  );
  return { from: ticks[0] ?? 0, to: ticks.at(-1) ?? 1, ticks };
}

/** Pixels along an axis of the given length; beyond its ends where the value is. */
export const alongAxis = ({ from, to }: Pick<Axis, 'from' | 'to'>, value: number, lengthPx: number) =>
  ((value - from) / (to - from)) * lengthPx;
