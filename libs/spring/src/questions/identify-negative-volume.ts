import type { AbsolutePascal, GaugePascal } from '@loamledger/units';
import { requireNumber } from '../numerics/input-error.js';
import type { Measured } from './volume-model.js';

/** Pressures read with the pump attached, before and after the empty negative chamber was let fill. */
export interface EqualisingProcedure {
  /** Full extension: positive chamber pumped, then after one slow stroke past the transfer position. */
  readonly repeats: readonly { readonly before: GaugePascal; readonly after: GaugePascal }[];
  readonly ambientPressure: AbsolutePascal;
  /** Positive chamber at full extension with the spacers that are in, m³. */
  readonly positiveVolume: Measured;
  /** m³. */
  readonly hoseVolume: Measured;
  /** m². */
  readonly boreArea: number;
  readonly shaftArea: number;
  /** m. */
  readonly transferPosition: number;
  /** Of one gauge reading, Pa. */
  readonly gaugeReadingSd: number;
}

export type NegativeVolumeIdentification =
  | {
      readonly status: 'identified';
      /** At full extension, m³. */
      readonly negativeVolume: number;
      /** Standard uncertainty, m³. */
      readonly sd: number;
    }
  | {
      readonly status: 'refused';
      readonly reason: 'no-pressure-drop' | 'too-uncertain';
      readonly message: string;
    };

/** Relative standard uncertainty beyond which the volume is refused: half of it could be missing. */
const LARGEST_RELATIVE_SD = 0.25;

/**
 * Volume of the negative chamber, m³, from the drop of pressure when it fills.
 *
 * The gas of positive chamber, hose and the negative chamber at ambient pressure is shared at the transfer position and read
 * at full extension: docs/equations/answers.md#equalising. Solved in closed form; errors by its derivatives.
 * @throws SpringInputError for quantities that cannot be.
 */
export function identifyNegativeVolume(procedure: EqualisingProcedure): NegativeVolumeIdentification {
  validate(procedure);
  const { repeats, ambientPressure, positiveVolume, hoseVolume, gaugeReadingSd } = procedure;
  const mean = (values: readonly number[]) => values.reduce((sum, v) => sum + v, 0) / values.length;
  const before = mean(repeats.map((r) => r.before)) + ambientPressure;
  const after = mean(repeats.map((r) => r.after)) + ambientPressure;
  const solve = (p1: number, p2: number, volume: number, hose: number) =>
    negativeVolume(procedure, p1, p2, volume, hose);
  const value = solve(before, after, positiveVolume.value, hoseVolume.value);
  if (!(after < before) || !(value > 0)) {
    return {
      status: 'refused',
      reason: 'no-pressure-drop',
      message: 'the pressure did not drop: the negative chamber was not empty, or did not fill',
    };
  }
  const readingSd = gaugeReadingSd / Math.sqrt(repeats.length);
  const shift = (f: (by: number) => number, sd: number) => (f(sd) - f(-sd)) / 2;
  const sd = Math.hypot(
    shift((d) => solve(before + d, after, positiveVolume.value, hoseVolume.value), readingSd),
    shift((d) => solve(before, after + d, positiveVolume.value, hoseVolume.value), readingSd),
    shift((d) => solve(before, after, positiveVolume.value + d, hoseVolume.value), positiveVolume.sd),
    shift((d) => solve(before, after, positiveVolume.value, hoseVolume.value + d), hoseVolume.sd),
  );
  if (!(sd <= LARGEST_RELATIVE_SD * value)) {
    const percent = ((100 * sd) / value).toFixed(0);
    return { status: 'refused', reason: 'too-uncertain', message: `only known to ${percent} %: repeat it` };
  }
  return { status: 'identified', negativeVolume: value, sd };
}

/**
 * p₁(V + V_h) + p_a·V_n = p_eq·(V_s + V_h + V_n + A_n·s_t), p₂(V + V_h) = p_eq·(V_s + V_h), V_s = V − A·s_t;
 * linear in V_n.
 */
function negativeVolume(
  { ambientPressure, boreArea, shaftArea, transferPosition }: EqualisingProcedure,
  before: number,
  after: number,
  positive: number,
  hose: number,
): number {
  const atRest = positive + hose;
  const atTransfer = atRest - boreArea * transferPosition;
  const equalised = (after * atRest) / atTransfer;
  const grown = (boreArea - shaftArea) * transferPosition;
  return (before * atRest - equalised * (atTransfer + grown)) / (equalised - ambientPressure);
}

function validate(procedure: EqualisingProcedure): void {
  requireNumber('ambientPressure', procedure.ambientPressure, 'Pa (absolute)', { above: 0 });
  requireNumber('repeats.length', procedure.repeats.length, '(count)', { atLeast: 1 });
  procedure.repeats.forEach(({ before, after }, i) => {
    requireNumber(`repeats[${i}].before`, before, 'Pa (gauge)', { above: 0 });
    requireNumber(`repeats[${i}].after`, after, 'Pa (gauge)', { above: 0 });
  });
  requireNumber('boreArea', procedure.boreArea, 'm²', { above: 0 });
  requireNumber('shaftArea', procedure.shaftArea, 'm²', { atLeast: 0, below: procedure.boreArea });
  requireNumber('positiveVolume.value', procedure.positiveVolume.value, 'm³', { above: 0 });
  requireNumber('positiveVolume.sd', procedure.positiveVolume.sd, 'm³', { atLeast: 0 });
  requireNumber('hoseVolume.value', procedure.hoseVolume.value, 'm³', { atLeast: 0 });
  requireNumber('hoseVolume.sd', procedure.hoseVolume.sd, 'm³', { atLeast: 0 });
  requireNumber('transferPosition', procedure.transferPosition, 'm', {
    atLeast: 0,
    below: procedure.positiveVolume.value / procedure.boreArea,
  });
  requireNumber('gaugeReadingSd', procedure.gaugeReadingSd, 'Pa', { atLeast: 0 });
}
