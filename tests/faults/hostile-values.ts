import fc from 'fast-check';
import { ID_OF_NOBODY } from '../api/support/open-api.js';

const LONG_TEXT = 100_000;
const DEEP = 200;
const MANY = 5_000;

/** Texts that have broken parsers, queries, pages and file names somewhere. */
const HOSTILE_TEXTS = [
  '',
  ' ',
  "'; drop table run; --",
  `" or 1=1 --`,
  '<script>alert(1)</script>',
  '{{7*7}}${7*7}%s%n',
  '=1+1',
  '../../etc/passwd',
  '\u0000',
  '\ud800',
  '\u202eright to left',
  '👩‍🔧'.repeat(50),
  '\r\nset-cookie: stolen=1',
  'NaN',
  'Infinity',
  '-0',
  '0x10',
  '1e999',
  '9'.repeat(400),
  '2026-13-45',
  '9999-12-31T23:59:59.999999999Z',
  ID_OF_NOBODY,
  ID_OF_NOBODY.toUpperCase(),
  'x'.repeat(LONG_TEXT),
] as const;

const nested = (depth: number): string => '['.repeat(depth) + ']'.repeat(depth);

/** Values as they stand in a JSON text, so that those are among them which no JSON library would write. */
const HOSTILE_VALUES = [
  ...HOSTILE_TEXTS.map((text) => JSON.stringify(text)),
  ...['null', 'true', '{}', '[]', '[[]]', '0', '-0', '-1', '0.1', '1e308', '-1e308', '1e999', '5e-324'],
  ...['9007199254740993', '2147483648', '1' + '0'.repeat(300), nested(DEEP)],
  `[${Array<string>(MANY).fill('1').join(',')}]`,
  '{"__proto__":{"polluted":true},"constructor":{"prototype":{"polluted":true}}}',
] as const;

/** Texts that are no JSON at all. */
const BROKEN_BODIES = [
  '',
  '{',
  '{"a":NaN}',
  '{"a":1,"a":2}',
  "{'a':1}",
  'null',
  '"text"',
  '[]',
  '\ufeff{}',
  nested(100_000),
].map((text) => Buffer.from(text));
const NOT_UTF8 = Buffer.from([0x7b, 0x22, 0xff, 0xfe, 0x22, 0x3a, 0x31, 0x7d]);

const CONTENT_TYPES = [
  'application/json',
  'application/json; charset=utf-16',
  'text/csv',
  'text/plain',
  'multipart/form-data; boundary=x',
  'application/xml',
  'nonsense',
];

/** Numbers about the edges of what fields allow, so that some are let in. */
const EDGE_NUMBERS = [
  '0',
  '-0',
  '-1',
  '0.1',
  '1',
  '2',
  '7',
  '12.5',
  '40',
  '1e-12',
  '0.30000000000000004',
  '99',
];

export const hostileText = fc.oneof(
  fc.constantFrom(...HOSTILE_TEXTS),
  fc.string({ unit: 'binary', maxLength: 60 }),
);
const anyValue = fc.oneof(
  { arbitrary: fc.constantFrom(...HOSTILE_VALUES), weight: 4 },
  { arbitrary: fc.json({ maxDepth: 4 }), weight: 1 },
);
const hostileString = hostileText.map((text) => JSON.stringify(text));
const hostileNumber = fc.oneof(
  fc.constantFrom(...EDGE_NUMBERS),
  fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => JSON.stringify(value)),
);
/** In the place of `example`: mostly of its type, since the wrong type is refused before anything else sees it. */
export function hostileValueFor(example: unknown): fc.Arbitrary<string> {
  const alike = { string: hostileString, number: hostileNumber }[typeof example as string] ?? anyValue;
  return fc.oneof({ arbitrary: alike, weight: 3 }, { arbitrary: anyValue, weight: 1 });
}
/** As it may stand in an address: half characters have no encoding and are exchanged, and what no server reads is cut. */
export const inAddress = (text: string): string =>
  encodeURIComponent(Buffer.from(text.slice(0, 2_000)).toString());

export const brokenBody = fc.constantFrom(...BROKEN_BODIES, NOT_UTF8);
export const wrongType = fc.constantFrom(...CONTENT_TYPES);
export const hostileHeader = fc.constantFrom(
  '"1"',
  '*',
  '',
  'W/"1"',
  '"' + '9'.repeat(400) + '"',
  'x'.repeat(300),
  '"-1"',
);
