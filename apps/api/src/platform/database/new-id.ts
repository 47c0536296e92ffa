import { v7 } from 'uuid';

/** A new id: a UUID of version 7, so that ids sort in the order of making. */
export const newId = (): string => v7();
