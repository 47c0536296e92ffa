import { AsyncLocalStorage } from 'node:async_hooks';

const moments = new AsyncLocalStorage<Date>();

/**
 * Lets the records that `work` makes be of `moment`: for what happened before it is entered. No request reaches it, and the
 * audit trail goes by the database's own clock: it tells when each was entered.
 */
export const dated = <T>(moment: Date, work: () => Promise<T>): Promise<T> => moments.run(moment, work);

/** The moment of what is made inside `dated`; elsewhere undefined: it is now. */
export const momentOfMaking = (): Date | undefined => moments.getStore();
