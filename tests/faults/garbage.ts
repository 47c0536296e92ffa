import fc from 'fast-check';
import { exampleOf, ID_OF_NOBODY, type Document, type Route } from '../api/support/open-api.js';

/** One request as bytes on the line: what a program with a fault, or a person with a grudge, could send. */
export interface GarbageRequest {
  readonly method: string;
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Buffer | undefined;
}

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

const hostileText = fc.oneof(fc.constantFrom(...HOSTILE_TEXTS), fc.string({ unit: 'binary', maxLength: 60 }));
const hostileValue = fc.oneof(
  { arbitrary: fc.constantFrom(...HOSTILE_VALUES), weight: 4 },
  { arbitrary: fc.json({ maxDepth: 4 }), weight: 1 },
);

/** Requests to `route` in the team, each right but for one or a few places. */
export function garbageFor(document: Document, route: Route, teamId: string): fc.Arbitrary<GarbageRequest> {
  return fc.record({
    method: fc.constant(route.method.toUpperCase()),
    path: pathOf(route, teamId),
    headers: headersOf(route),
    body: bodyOf(document, route),
  });
}

function pathOf(route: Route, teamId: string): fc.Arbitrary<string> {
  const own = route.path.replace('{teamId}', teamId);
  const parameters = fc.array(
    fc.oneof(
      { arbitrary: fc.constant(ID_OF_NOBODY), weight: 3 },
      { arbitrary: hostileText.map(encoded), weight: 1 },
      { arbitrary: fc.constantFrom('%00', '%ff', '%', '..%2f..', '.'), weight: 1 },
    ),
    { minLength: 3, maxLength: 3 },
  );
  const names = [
    'cursor',
    'limit',
    'trackId',
    'bikeId',
    'riderId',
    'end',
    'condition',
    'outcome',
    '__proto__',
  ];
  const query = fc.array(fc.tuple(fc.constantFrom(...names), hostileText.map(encoded)), { maxLength: 3 });
  return fc.tuple(parameters, query).map(([values, pairs]) => {
    const path = own.replaceAll(/\{\w+\}/g, () => values.shift() ?? ID_OF_NOBODY);
    return `/api/v1${path}${pairs.length > 0 ? '?' : ''}${pairs.map(([name, text]) => `${name}=${text}`).join('&')}`;
  });
}

/** As it may stand in an address: half characters have no encoding and are exchanged, and what no server reads is cut. */
function encoded(text: string): string {
  return encodeURIComponent(Buffer.from(text.slice(0, 2_000)).toString());
}

function headersOf(route: Route): fc.Arbitrary<Record<string, string>> {
  const printable = fc.constantFrom(
    '"1"',
    '*',
    '',
    'W/"1"',
    '"' + '9'.repeat(400) + '"',
    'x'.repeat(300),
    '"-1"',
  );
  return fc
    .record(
      {
        'if-match': route.method === 'put' ? fc.constant('"1"') : printable,
        'idempotency-key': printable,
        'content-type': fc.oneof(
          { arbitrary: fc.constant(route.fileType ?? 'application/json'), weight: 8 },
          { arbitrary: fc.constantFrom(...CONTENT_TYPES), weight: 1 },
        ),
        accept: printable,
      },
      { requiredKeys: route.method === 'put' ? ['content-type', 'if-match'] : ['content-type'] },
    )
    .map((headers) => headers as Record<string, string>);
}

function bodyOf(document: Document, route: Route): fc.Arbitrary<Buffer | undefined> {
  if (route.fileType === 'text/csv') return fc.oneof(hostileText, csv).map((text) => Buffer.from(text));
  if (route.fileType === 'application/gpx+xml')
    return fc.oneof(hostileText, gpx(route.fileExample)).map((text) => Buffer.from(text));
  if (route.fileType) return fc.oneof(broken, mutated(SMALL_ARCHIVE));
  if (!route.body) return fc.oneof({ arbitrary: fc.constant(undefined), weight: 4 }, broken);
  const example = exampleOf(document, route.body);
  return fc.oneof({ arbitrary: mutated(example), weight: 12 }, { arbitrary: broken, weight: 1 });
}

/** An archive that is one but for what is changed in it. */
const SMALL_ARCHIVE = {
  format: 'loamledger-team',
  version: 1,
  exportedAt: '2026-05-09T10:30:00.000Z',
  team: { name: 'Team', evidenceVersion: 0 },
  people: [{ id: ID_OF_NOBODY, displayName: 'Coach', email: null, role: 'coach', riderId: null }],
  records: {
    track: [
      {
        id: '01990b5e-7c3a-7b1e-9f52-3a6f0d2c4e13',
        createdAt: '2026-05-09T10:30:00.000Z',
        name: 'Track',
        altitude: 900,
        note: '',
        sections: ['Stairs'],
        version: 1,
      },
    ],
  },
};
const broken = fc.constantFrom(...BROKEN_BODIES, NOT_UTF8);
const csv = fc
  .array(fc.array(hostileText, { minLength: 1, maxLength: 12 }), { maxLength: 8 })
  .map((lines) => `date,track,bike,time\n${lines.map((cells) => cells.join(',')).join('\n')}`);

/** A recording with some of its pieces exchanged for others, or for hostile ones. */
const gpx = (example: string) => {
  const pieces = example.split(/(?=[<>="])/);
  return fc
    .array(fc.tuple(fc.nat({ max: pieces.length }), fc.oneof(hostileText, fc.constantFrom(...pieces))), {
      minLength: 1,
      maxLength: 4,
    })
    .map((changes) => changes.reduce((parts, [at, piece]) => parts.toSpliced(at, 1, piece), pieces).join(''));
};

/** The example with one to three of its values, at any depth, exchanged for hostile ones, or one added. */
function mutated(example: unknown): fc.Arbitrary<Buffer> {
  const places = placesIn(example);
  return fc
    .array(fc.tuple(fc.nat({ max: places.length }), hostileValue), { minLength: 1, maxLength: 3 })
    .map((changes) => {
      const replaced = new Map(changes.map(([place, value]) => [places[place] ?? '/unknownField', value]));
      return Buffer.from(written(example, '', replaced));
    });
}

/** The address of every value inside the example. */
function placesIn(value: unknown, address = ''): string[] {
  if (typeof value !== 'object' || value === null) return [address];
  return [address, ...Object.entries(value).flatMap(([key, inner]) => placesIn(inner, `${address}/${key}`))];
}

function written(value: unknown, address: string, replaced: ReadonlyMap<string, string>): string {
  const instead = replaced.get(address);
  if (instead !== undefined) return instead;
  if (Array.isArray(value)) {
    return `[${value.map((inner, i) => written(inner, `${address}/${i}`, replaced)).join(',')}]`;
  }
  if (typeof value !== 'object' || value === null) return JSON.stringify(value ?? null);
  const fields = Object.entries(value).map(
    ([key, inner]) => `${JSON.stringify(key)}:${written(inner, `${address}/${key}`, replaced)}`,
  );
  const unknown = address === '' && replaced.get('/unknownField');
  return `{${[...fields, ...(unknown ? [`"unknownField":${unknown}`] : [])].join(',')}}`;
}
