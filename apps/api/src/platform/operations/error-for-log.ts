/**
 * What the log tells of an error that nobody expected: its name, the database's code and where it came from. The words
 * of the database's errors are left out, since they quote the values that it refused.
 */
export function errorForLog(error: unknown): Record<string, string> {
  if (!(error instanceof Error)) return { error: typeof error };
  const { code, table, constraint } = ((error as { driverError?: unknown }).driverError ?? error) as Record<
    string,
    unknown
  >;
  const isDatabase = typeof code === 'string' && SQLSTATE.test(code);
  return {
    error: error.name,
    ...(typeof code === 'string' && { code }),
    ...(typeof table === 'string' && { table }),
    ...(typeof constraint === 'string' && { constraint }),
    ...(!isDatabase && { reason: error.message }),
    stack: framesOf(error),
  };
}

const SQLSTATE = /^[0-9A-Z]{5}$/;

/** The stack without the message on top of it, which may have several lines. */
const framesOf = ({ stack = '' }: Error): string =>
  stack
    .split('\n')
    .filter((line) => /^\s+at /.test(line))
    .join('\n');
