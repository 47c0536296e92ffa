import { Refusal } from './refusal.js';

/** SQLSTATE codes and socket errors that mean the server is away, full or shutting down, not that a query is wrong. */
const AWAY = new Set([
  'EAI_AGAIN',
  'EHOSTUNREACH',
  'ENETUNREACH',
  'ENOTFOUND',
  'ECONNREFUSED',
  'ECONNRESET',
  'ENOENT',
  'ETIMEDOUT',
  'EPIPE',
  '57P01',
  '57P02',
  '57P03',
  // Its disk is full, its memory is, or as many are connected as may be.
  '53100',
  '53200',
  '53300',
  // What the server kept of a statement is out of date since a migration: asked again, it is made anew.
  '0A000',
  '26000',
  // The connection is gone, or was ended for standing still amid a transaction.
  '08001',
  '08003',
  '08006',
  '25P03',
]);
const QUERY_CANCELLED = '57014';
/** Two writers waited for each other and Postgres let one go: trying again is right. */
const DEADLOCK = '40P01';
const UNIQUE_VIOLATION = '23505';
const FOREIGN_KEY_VIOLATION = '23503';

/**
 * What a database error means to the caller: a refusal, `unavailable`, or undefined where it is our own mistake.
 * Constraint names are kept out of the answer.
 */
export function databaseRefusal(error: unknown): Refusal | 'unavailable' | undefined {
  const { code, message } = driverError(error);
  if (isLostBetweenStatements(error)) return 'unavailable';
  if (code === UNIQUE_VIOLATION) {
    return new Refusal(
      'request.duplicate',
      'conflict',
      'The same thing is already there under this name or key.',
    );
  }
  if (code === FOREIGN_KEY_VIOLATION) {
    return new Refusal(
      'request.unknown-reference',
      'conflict',
      'It refers to something that is not in this team, or is still referred to.',
    );
  }
  const away = (code !== undefined && AWAY.has(code)) || code === QUERY_CANCELLED || code === DEADLOCK;
  return away ||
    /Connection terminated|connection timeout|Query read timeout|timeout exceeded when trying to connect|is not queryable/i.test(
      message,
    )
    ? 'unavailable'
    : undefined;
}

/** Whether `error` says that a unique key is already taken. */
export const isUniqueViolation = (error: unknown): boolean => driverError(error).code === UNIQUE_VIOLATION;

/** What the mapper says of a connection that was lost between two statements of a transaction. */
const LOST_BETWEEN_STATEMENTS = [
  'QueryRunnerAlreadyReleasedError',
  'QueryRunnerProviderAlreadyReleasedError',
];
const isLostBetweenStatements = (error: unknown): boolean =>
  error instanceof Error && LOST_BETWEEN_STATEMENTS.includes(error.name);

function driverError(error: unknown): { code: string | undefined; message: string } {
  const outer = error as { code?: unknown; message?: unknown; driverError?: unknown } | null;
  const inner = (outer?.driverError ?? outer) as { code?: unknown; message?: unknown } | null;
  return {
    code: typeof inner?.code === 'string' ? inner.code : undefined,
    message: typeof inner?.message === 'string' ? inner.message : '',
  };
}
