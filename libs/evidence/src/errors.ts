/**
 * Input that no correct caller can produce. Carries what a message for the caller needs: which argument,
 * the value it had, its unit and what would have been allowed.
 */
export class EvidenceInputError extends Error {
  override readonly name = 'EvidenceInputError';

  constructor(
    readonly argument: string,
    readonly value: unknown,
    readonly unit: string,
    readonly allowed: string,
  ) {
    super(`${argument} is ${String(value)} (${unit}); allowed: ${allowed}`);
  }
}

/** Throws unless `value` is a finite number. */
export function requireFinite(argument: string, value: number, unit: string): void {
  if (!Number.isFinite(value)) throw new EvidenceInputError(argument, value, unit, 'a finite number');
}

/** Throws unless `value` is a number from `min` to `max`, both included. */
export function requireBetween(
  argument: string,
  value: number,
  unit: string,
  min: number,
  max: number,
): void {
  if (!(value >= min && value <= max)) {
    throw new EvidenceInputError(argument, value, unit, `${min} to ${max}`);
  }
}

/** Throws unless `value` is a finite number of at least 0. */
export function requireNotNegative(argument: string, value: number, unit: string): void {
  if (!(value >= 0 && Number.isFinite(value))) {
    throw new EvidenceInputError(argument, value, unit, 'a finite number ≥ 0');
  }
}

/** Throws unless `value` is a finite number above 0. */
export function requirePositive(argument: string, value: number, unit: string): void {
  if (!(value > 0 && Number.isFinite(value))) {
    throw new EvidenceInputError(argument, value, unit, 'a finite number > 0');
  }
}
