import { plainToInstance } from 'class-transformer';
import { isUUID } from 'class-validator';
import type { FieldProblem } from '../errors/refusal.js';
import { isRealDay, isRealMoment, PRINTABLE } from '../http/fields.js';
import { tidyNumbers } from '../http/tidy-numbers.js';
import { echo, problemsOf } from '../http/validation.pipe.js';

/** What is wrong with a value that an archive holds at the place `at`; nothing where it is right. */
export type Check = (value: unknown, at: string) => readonly FieldProblem[];

const LARGEST_INT = 2_147_483_647;

const check =
  (allowed: string, holds: (value: unknown) => boolean): Check =>
  (value, at) =>
    holds(value) ? [] : [{ field: at, given: echo(value), allowed }];

export const number = (minimum: number, maximum: number): Check =>
  check(
    `a number from ${minimum} to ${maximum}`,
    (value) => typeof value === 'number' && value >= minimum && value <= maximum,
  );

export const whole = (minimum: number, maximum = LARGEST_INT): Check =>
  check(
    `a whole number from ${minimum} to ${maximum}`,
    (value) => Number.isInteger(value) && (value as number) >= minimum && (value as number) <= maximum,
  );

export const text = (maxLength: number): Check =>
  check(
    `text of at most ${maxLength} characters without control characters`,
    (value) => typeof value === 'string' && value.length <= maxLength && PRINTABLE.test(value),
  );

export const word = (words: readonly string[]): Check =>
  check(`one of: ${words.join(', ')}`, (value) => typeof value === 'string' && words.includes(value));

export const flag: Check = check('true or false', (value) => typeof value === 'boolean');
export const uuid: Check = check('a UUID', (value) => isUUID(value));
export const day: Check = check('a day as YYYY-MM-DD', (value) => isRealDay(value));
export const moment: Check = check(
  'a moment from 1970 to 2199 as in 2026-05-09T10:30:00.000Z',
  (value) => isRealMoment(value) && /^(19[7-9]\d|2[01]\d\d)-.{5}T.{8,15}Z$/.test(value as string),
);

export const nullable =
  (inner: Check): Check =>
  (value, at) =>
    value === null ? [] : inner(value, at);

export const list =
  (inner: Check, maxItems: number): Check =>
  (value, at) =>
    Array.isArray(value) && value.length <= maxItems
      ? value.flatMap((item, i) => inner(item, `${at}.${i}`))
      : [{ field: at, given: echo(value), allowed: `a list of at most ${maxItems}` }];

/** An object of exactly these fields; those of `optional` may be missing. */
export const part =
  (fields: Readonly<Record<string, Check>>, optional: readonly string[] = []): Check =>
  (value, at) => {
    if (!isObject(value)) return [{ field: at, given: echo(value), allowed: 'an object' }];
    const unknown = Object.keys(value).filter((name) => !Object.hasOwn(fields, name));
    return [
      ...unknown.map((name) => ({
        field: `${at}.${name}`,
        given: echo(value[name]),
        allowed: 'absent: there is no such field',
      })),
      ...Object.entries(fields).flatMap(([name, inner]) => {
        if (Object.hasOwn(value, name)) return inner(value[name], `${at}.${name}`);
        return optional.includes(name) ? [] : [{ field: `${at}.${name}`, given: null, allowed: 'there' }];
      }),
    ];
  };

/**
 * What the API's own message would say of the value: its ranges are held against the units that people read.
 * @param of makes the message of a stored value. It may throw on what is none.
 */
export const message =
  <Stored>(type: new () => object, of: (stored: Stored) => object): Check =>
  (value, at) => {
    let made: object;
    try {
      made = tidyNumbers(of(value as Stored)) as object;
    } catch {
      return [{ field: at, given: echo(value), allowed: `a whole ${type.name.replace(/Dto$/, '')}` }];
    }
    return problemsOf(plainToInstance(type, made)).map((problem) => ({
      ...problem,
      field: `${at}.${problem.field}`,
    }));
  };

export const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
