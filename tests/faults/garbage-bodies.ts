import fc from 'fast-check';
import { ID_OF_NOBODY, type Route } from '../api/support/open-api.js';
import { brokenBody, hostileText, hostileValueFor } from './hostile-values.js';

/** A body of the route that is right but for a few places; `example` is right. */
export function spoiledBody(route: Route, example: unknown): fc.Arbitrary<Buffer> {
  const right = route.fileType === undefined ? mutated(example) : spoiledFile(route);
  return fc.oneof({ arbitrary: right, weight: 12 }, { arbitrary: brokenBody, weight: 1 });
}

function spoiledFile({ fileType, fileExample }: Route): fc.Arbitrary<Buffer> {
  if (fileType === 'text/csv') return fc.oneof(hostileText, csv).map((text) => Buffer.from(text));
  if (fileType !== 'application/gpx+xml') return mutated(SMALL_ARCHIVE);
  return fc.oneof(hostileText, gpx(fileExample)).map((text) => Buffer.from(text));
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

interface Place {
  readonly address: string;
  readonly value: unknown;
}

/** The example with one to three of its values, at any depth, exchanged for hostile ones, or one added. */
function mutated(example: unknown): fc.Arbitrary<Buffer> {
  const places = [...placesIn(example), { address: '/unknownField', value: null }];
  const change = fc
    .constantFrom(...places)
    .chain(({ address, value }) => fc.tuple(fc.constant(address), hostileValueFor(value)));
  const changes = fc.oneof(
    { arbitrary: fc.tuple(change), weight: 3 },
    { arbitrary: fc.array(change, { minLength: 2, maxLength: 3 }), weight: 1 },
  );
  return changes.map((made) => Buffer.from(written(example, '', new Map(made))));
}

/** The address of every value inside the example. */
function placesIn(value: unknown, address = ''): Place[] {
  if (typeof value !== 'object' || value === null) return [{ address, value }];
  const inner = Object.entries(value).flatMap(([key, one]) => placesIn(one, `${address}/${key}`));
  return [{ address, value }, ...inner];
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
