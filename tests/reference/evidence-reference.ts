import { readFileSync } from 'node:fs';

/** Reads a file of reference values next to this one; `T` describes the parts that a test uses. */
export const reference = <T>(name: string): T =>
  JSON.parse(readFileSync(new URL(`./${name}.json`, import.meta.url), 'utf8')) as T;
