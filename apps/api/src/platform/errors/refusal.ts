/** What a refusal means to the caller; the filter alone turns it into a status. */
export type RefusalKind =
  | 'malformed'
  | 'invalid'
  | 'unauthenticated'
  | 'forbidden'
  | 'not-found'
  | 'conflict'
  | 'stale'
  | 'precondition-required'
  | 'too-many-requests'
  | 'unavailable';

/** One field that was refused: what was given and what would be allowed. */
export interface FieldProblem {
  /** Path in the request body, e.g. `fork.pressurePsi`. */
  readonly field: string;
  readonly given: unknown;
  /** Allowed range or set, in words, e.g. `0 to 400 psi`. */
  readonly allowed: string;
}

/**
 * An expected refusal: the caller asked for something that cannot be had, and is told why.
 * Features extend it beside their code with a stable dotted `code`.
 */
export class Refusal extends Error {
  /** After how long the same request may be granted, where waiting helps. */
  readonly retryAfterSeconds?: number;

  constructor(
    readonly code: string,
    readonly kind: RefusalKind,
    message: string,
    readonly fields: readonly FieldProblem[] = [],
  ) {
    super(message);
  }
}

/** The thing asked for is not there, or not this team's: the two are never told apart. */
export class NotFound extends Refusal {
  constructor(thing: string, id: string) {
    super(`${thing.replaceAll(' ', '-')}.not-found`, 'not-found', `There is no ${thing} ${id} in this team.`);
  }
}

/** A field is refused for a reason that only stored data could tell. */
export class InvalidField extends Refusal {
  constructor(code: string, field: string, given: unknown, allowed: string) {
    super(code, 'invalid', `${field} must be ${allowed}.`, [{ field, given, allowed }]);
  }
}
