/** What a view needs to know of something that is read: the data, or the error and the way to try again. */
export interface Readable<Data> {
  readonly data: Data | undefined;
  readonly error: Error | null;
  readonly refetch: () => unknown;
}

/** Several readings as one: there when all are, failed when one has. */
export function joined<Data>(queries: readonly Readable<unknown>[], join: () => Data): Readable<Data> {
  return {
    data: queries.every(({ data }) => data !== undefined) ? join() : undefined,
    error: queries.find(({ error }) => error !== null)?.error ?? null,
    refetch: () => queries.filter(({ error }) => error !== null).forEach(({ refetch }) => void refetch()),
  };
}
