/** How one request was answered. Status 0: the connection broke, or it was given up as hanging. */
export interface Answer {
  readonly status: number;
  readonly ms: number;
  readonly givenUp: boolean;
  readonly text: string;
}

/**
 * What an answer may not tell of the inside. Texts that were sent come back in answers and match none of these.
 */
const INSIDES: readonly RegExp[] = [
  // Stack frames and files of ours.
  /\n\s+at \S+/,
  /\bat \S+ \(\S+:\d+:\d+\)/,
  /node_modules|node:internal|file:\/\/|\/(?:dist|apps|libs|home|tmp|var|usr|work)\/[\w.-]+\//,
  /\.(?:[cm]?js|ts):\d+/,
  // Classes of errors.
  /\b(?:Type|Range|Reference|Syntax|QueryFailed|EntityNotFound|Aggregate)Error\b/,
  // Statements, and the database's own words about them.
  /\b(?:select|insert into|update|delete from)\s+["$]/i,
  /\b(?:left|inner) join\b/i,
  /violates|duplicate key|syntax error at|invalid input syntax|invalid byte sequence|deadlock detected/i,
  /\b(?:relation|column|constraint|operator|function) ["(]/i,
  /row-level security|pg_catalog|information_schema|SQLSTATE/i,
];

/** The parts of an answer that tell of the inside; `names` are those of constraints and indexes. */
export function insidesToldBy({ text }: Answer, names: readonly string[]): string[] {
  const told = INSIDES.flatMap((pattern) => pattern.exec(text)?.[0] ?? []);
  return [...told, ...names.filter((name) => text.includes(name))];
}

/** Refusals that were made before anything stored was asked for. */
const AT_THE_DOOR = /^(?:request|precondition|sign-in|role|token)\.|^team\.not-found$/;

/** Whether the request was taken for one of its route: done, or refused for what is stored or computed. */
export function hasReached({ status, text }: Answer): boolean {
  if (status < 300) return status > 0;
  const [, code = 'request.'] = /"code":"([^"]+)"/.exec(text) ?? [];
  return status < 500 && !AT_THE_DOOR.test(code);
}
