/** An input that cannot be: names the argument, its value, its unit and what is allowed. */
export class SpringInputError extends Error {
  override readonly name = 'SpringInputError';

  constructor(
    readonly argument: string,
    readonly value: unknown,
    readonly unit: string,
    readonly allowed: string,
  ) {
    super(`${argument} = ${String(value)} ${unit} is not possible; allowed: ${allowed}`);
  }
}

/** Bounds of a number; a bound that is left out does not bind. */
export interface Bounds {
  readonly above?: number;
  readonly atLeast?: number;
  readonly below?: number;
  readonly atMost?: number;
}

function describe({ above, atLeast, below, atMost }: Bounds): string {
  const parts = [
    above === undefined ? undefined : `> ${above}`,
    atLeast === undefined ? undefined : `≥ ${atLeast}`,
    below === undefined ? undefined : `< ${below}`,
    atMost === undefined ? undefined : `≤ ${atMost}`,
  ].filter((part) => part !== undefined);
  return parts.length === 0 ? 'a finite number' : parts.join(' and ');
}

function isWithin(value: number, { above, atLeast, below, atMost }: Bounds): boolean {
  return (
    (above === undefined || value > above) &&
    (atLeast === undefined || value >= atLeast) &&
    (below === undefined || value < below) &&
    (atMost === undefined || value <= atMost)
  );
}

/** Returns `value` if it is a finite number within `bounds`; throws a SpringInputError otherwise. */
export function requireNumber(argument: string, value: number, unit: string, bounds: Bounds): number {
  if (typeof value !== 'number' || !Number.isFinite(value) || !isWithin(value, bounds)) {
    throw new SpringInputError(argument, value, unit, describe(bounds));
  }
  return value;
}

/** Returns `value` if it is a whole number from `least` to `most`; throws a SpringInputError otherwise. */
export function requireWhole(argument: string, value: number, least: number, most: number): number {
  if (!Number.isInteger(value) || value < least || value > most) {
    throw new SpringInputError(argument, value, '(count)', `a whole number from ${least} to ${most}`);
  }
  return value;
}
