import { requireNumber } from './input-error.js';
import { NORMAL_95 } from './normal.js';

/** One input of an answer with its standard uncertainty, both in the input's unit. */
export interface UncertainInput<Name extends string> {
  readonly name: Name;
  readonly value: number;
  readonly sd: number;
  /** Whether the value was assumed rather than measured or entered; said with the answer. */
  readonly isAssumed: boolean;
}

/** What one input adds to the uncertainty of an answer. */
export interface Contribution<Name extends string> {
  readonly name: Name;
  /** Change of the answer for one standard uncertainty more of the input, in the answer's unit. */
  readonly effect: number;
  /** Part of the answer's variance, 0…1. */
  readonly share: number;
  readonly isAssumed: boolean;
}

/** An answer with its uncertainty, or none. */
export type UncertainAnswer<Name extends string> =
  | {
      readonly status: 'found';
      readonly value: number;
      readonly sd: number;
      /** 90 % interval. */
      readonly lower: number;
      readonly upper: number;
      /** Greatest part first. */
      readonly contributions: readonly Contribution<Name>[];
      readonly assumed: readonly Name[];
    }
  | { readonly status: 'no-answer' };

/** Part of a standard uncertainty by which an input is moved: small against the curvature, large against rounding. */
const STEP = 0.1;

/**
 * Standard uncertainty of an answer from those of its inputs, by linear propagation, in the answer's unit.
 *
 * u² = Σ (∂f/∂x_i·u_i)², independent errors, central differences; docs/equations/answers.md#uncertainty. One-sided where
 * the answer does not exist on one side. Right to first order: where an answer bends within its own interval it is not.
 * @param answer undefined where there is none for the values given.
 * @throws SpringInputError for an uncertainty that is negative or no number.
 */
export function propagateUncertainty<Name extends string>(
  inputs: readonly UncertainInput<Name>[],
  answer: (values: Readonly<Record<Name, number>>) => number | undefined,
): UncertainAnswer<Name> {
  inputs.forEach(({ name, sd }) => requireNumber(`sd of ${name}`, sd, '', { atLeast: 0 }));
  const values = Object.fromEntries(inputs.map(({ name, value }) => [name, value])) as Record<Name, number>;
  const value = answer(values);
  if (value === undefined || Number.isNaN(value)) return { status: 'no-answer' };
  const effects: number[] = [];
  for (const { name, sd } of inputs) {
    const effect = sd === 0 ? 0 : effectOf(answer, values, name, STEP * sd, value);
    if (effect === undefined) return { status: 'no-answer' };
    effects.push(effect / STEP);
  }
  const sd = Math.hypot(...effects);
  const contributions = inputs
    .map(({ name, isAssumed }, i) => {
      const effect = effects[i] ?? 0;
      return { name, effect, share: sd === 0 ? 0 : (effect / sd) ** 2, isAssumed };
    })
    .sort((a, b) => b.share - a.share);
  return {
    status: 'found',
    value,
    sd,
    lower: value - NORMAL_95 * sd,
    upper: value + NORMAL_95 * sd,
    contributions,
    assumed: inputs.filter(({ isAssumed }) => isAssumed).map(({ name }) => name),
  };
}

/** Change of the answer for one step of an input, from both sides or the one that has an answer. */
function effectOf<Name extends string>(
  answer: (values: Readonly<Record<Name, number>>) => number | undefined,
  values: Readonly<Record<Name, number>>,
  name: Name,
  step: number,
  here: number,
): number | undefined {
  const above = answer({ ...values, [name]: values[name] + step });
  const below = answer({ ...values, [name]: values[name] - step });
  if (above !== undefined && below !== undefined) return (above - below) / 2;
  if (above !== undefined) return above - here;
  return below === undefined ? undefined : here - below;
}
