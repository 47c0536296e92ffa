import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  call,
  exampleOf,
  readDocument,
  resolved,
  routesOf,
  type Document,
  type Route,
  type Schema,
} from './support/open-api.js';
import { startService, type TestService } from './support/service.js';
import { FORK, foundTeam, SETUP, type Stored, type TestTeam } from './support/team.js';

const api: Document = readDocument();
const ROUTES = routesOf(api).filter(
  (route): route is Route & { body: Schema } => route.body !== undefined && route.path.includes('{teamId}'),
);
/** Any id will do: the checks of the body come before the look for the thing. */
const ID = '01990b5e-7c3a-7b1e-9f52-3a6f0d2c4e11';

let service: TestService;
let team: TestTeam;
beforeAll(async () => {
  service = await startService();
  team = await foundTeam(service);
  await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: team.bike.id }).expect(201);
});
afterAll(() => service.stop());

interface Field {
  readonly path: readonly (string | number)[];
  readonly schema: Schema;
}

/** Every field below a schema that `isWanted`. */
function fieldsOf(schema: Schema, isWanted: (schema: Schema) => boolean, path: Field['path'] = []): Field[] {
  const inner = resolved(api, schema);
  if (inner.properties) {
    return Object.entries(inner.properties).flatMap(([name, field]) =>
      fieldsOf(field, isWanted, [...path, name]),
    );
  }
  if (inner.items && resolved(api, inner.items).properties)
    return fieldsOf(inner.items, isWanted, [...path, 0]);
  return isWanted(inner) ? [{ path, schema: inner }] : [];
}

/** Every list of messages below a schema. */
function listsOf(schema: Schema, path: Field['path'] = []): Field[] {
  const inner = resolved(api, schema);
  const below = Object.entries(inner.properties ?? {}).flatMap(([name, field]) =>
    listsOf(field, [...path, name]),
  );
  return inner.items && resolved(api, inner.items).properties ? [{ path, schema: inner }, ...below] : below;
}

/** The route's example body with one field replaced. */
function bodyWith(route: { body: Schema }, path: Field['path'], value: unknown): object {
  const body = exampleOf(api, route.body) as Record<string, unknown>;
  const parent = path
    .slice(0, -1)
    .reduce<Record<string, unknown>>((node, step) => node[step] as Record<string, unknown>, body);
  parent[path.at(-1) ?? ''] = value;
  return body;
}

interface Problem {
  readonly errors: readonly { field: string; given: unknown; allowed: string }[];
}
const fieldNames = (body: unknown) => (body as Problem).errors.map(({ field }) => field);

const isNumber = ({ type }: Schema) => ['number', 'integer'].some((kind) => [type].flat().includes(kind));
const isText = ({ type, ...rest }: Schema) => [type].flat().includes('string') && 'maxLength' in rest;

describe('every number of every message', () => {
  it.each(ROUTES)('is refused beyond its limits, and named: $method $path', async (route) => {
    const fields = fieldsOf(route.body, isNumber);
    for (const { path, schema } of fields) {
      const { minimum = NaN, maximum = NaN } = schema;
      const step = [schema.type].flat().includes('integer') ? 1 : Math.max(1e-3, Math.abs(maximum) * 1e-9);
      for (const value of [minimum - step, maximum + step, 1e300, -1e300, '5', [5], true]) {
        const { status, body } = await call(api, team.mechanic, route, team.id, bodyWith(route, path, value));
        expect([status, path.join('.'), value, fieldNames(body)]).toEqual([
          422,
          path.join('.'),
          value,
          expect.arrayContaining([path.join('.')]),
        ]);
      }
    }
  });

  it('cannot be no number: JSON has no NaN, and what overflows is refused', async () => {
    const body = JSON.stringify(FORK);
    for (const [value, status] of [
      ['NaN', 400],
      ['Infinity', 400],
      ['1e999', 422],
      ['-1e999', 422],
    ] as const) {
      const text = body.replace(/"strokeMm":[\d.]+/, `"strokeMm":${value}`);
      const answer = await team.mechanic
        .post(`${team.path}/spring-units`)
        .set('content-type', 'application/json')
        .send(text);
      expect([value, answer.status]).toEqual([value, status]);
    }
  });
});

describe('every text of every message', () => {
  it.each(ROUTES)(
    'is refused with control characters or half a surrogate pair: $method $path',
    async (route) => {
      for (const { path } of fieldsOf(route.body, isText)) {
        for (const value of ['a\u0000b', 'a\u001bb', 'a\ud800b', 5, {}, 'x'.repeat(2_001)]) {
          const { status, body } = await call(
            api,
            team.mechanic,
            route,
            team.id,
            bodyWith(route, path, value),
          );
          expect([status, fieldNames(body)]).toEqual([422, expect.arrayContaining([path.join('.')])]);
        }
      }
    },
  );

  it('is refused in a list too', async () => {
    for (const section of ['a\u0000b', 'a\ud800b', 5, 'x'.repeat(81)]) {
      const track = { name: 'Track', altitudeM: 10, sections: ['Woods', section] };
      const { body } = await team.mechanic.post(`${team.path}/tracks`, track).expect(422);
      expect(fieldNames(body)).toContain('sections');
    }
  });
});

describe('every list of messages', () => {
  const withLists = ROUTES.filter(({ body }) => listsOf(body).length > 0);
  it.each(withLists)('is refused with something else in it: $method $path', async (route) => {
    for (const { path } of listsOf(route.body)) {
      for (const value of [[[]], [[{}]], [null], ['a'], [5], {}, 'a']) {
        const { status, body } = await call(api, team.mechanic, route, team.id, bodyWith(route, path, value));
        expect([value, status, fieldNames(body).join()]).toEqual([
          value,
          422,
          expect.stringContaining(path.join('.')),
        ]);
      }
    }
  });
});

describe('every message', () => {
  it.each(ROUTES)('is refused with a field that it does not have: $method $path', async (route) => {
    const body = { ...(exampleOf(api, route.body) as object), nonsense: 1, __proto__: { polluted: 1 } };
    const answer = await call(api, team.mechanic, route, team.id, body);
    expect([answer.status, fieldNames(answer.body)]).toEqual([422, expect.arrayContaining(['nonsense'])]);
  });

  it.each(ROUTES)('that is no such message gets a 4xx: $method $path', async (route) => {
    const json = (text: string) =>
      call(api, team.mechanic, { ...route, body: undefined }, team.id)
        .set('content-type', 'application/json')
        .set('idempotency-key', String(Math.random()))
        .send(text);
    const deep = (open: string, close: string) => `${open.repeat(50_000)}1${close.repeat(50_000)}`;
    const garbage = [
      '',
      'null',
      '"text"',
      '5',
      '[]',
      '[[]]',
      '{',
      '{"a":}',
      '\u0000',
      '{"__proto__":{"a":1}}',
      '{"constructor":{"prototype":{"a":1}}}',
      deep('[', ']'),
      deep('{"a":', '}'),
      `{"fork":${deep('{"fork":', '}')}}`,
      `{"name":"${'x'.repeat(4 * 1024 * 1024)}"}`,
    ];
    for (const text of garbage) {
      const { status } = await json(text);
      expect([text.slice(0, 30), status >= 400 && status < 500]).toEqual([text.slice(0, 30), true]);
    }
  });

  it('of a type that is not taken is refused as such', async () => {
    const xml = team.mechanic.post(`${team.path}/tracks`).set('content-type', 'application/xml');
    await xml.send('<track/>').expect(415);
  });
});

describe('names with SQL or HTML in them', () => {
  it.each([
    `'; drop table rider; --`,
    `<script>alert(1)</script>`,
    `"><img src=x onerror=alert(1)>`,
    '\\x00 %s ${7*7} {{7*7}}',
    '名前 🚵 عربى \u202e',
    '=cmd()',
  ])('are stored as they are and do nothing: %s', async (name) => {
    const { body } = await team.mechanic.post(`${team.path}/tracks`, { name, altitudeM: 10 }).expect(201);
    const { id } = body as Stored;
    const answer = await team.mechanic.get(`${team.path}/tracks/${id}`).expect(200);
    expect((answer.body as Stored)['name']).toBe(name);
    expect(answer.headers['content-type']).toContain('application/json');
    expect(answer.headers['x-content-type-options']).toBe('nosniff');
  });
});

describe('a path or a query', () => {
  it.each([
    ['limit=0', 'limit'],
    ['limit=501', 'limit'],
    ['limit=1.5', 'limit'],
    ['limit=many', 'limit'],
    ['limit=1&limit=2', 'limit'],
    ['cursor=abc', 'cursor'],
    ["cursor=' or 1=1", 'cursor'],
    ['trackId=abc', 'trackId'],
    ['trackId[$ne]=x', 'trackId[$ne]'],
    ['nonsense=1', 'nonsense'],
  ])('that is not allowed is refused and named: %s', async (query, field) => {
    const { status, body } = await team.mechanic.get(`${team.path}/runs?${encodeURI(query)}`);
    expect([status, fieldNames(body)]).toEqual([422, [field]]);
  });

  it.each(['abc', '1', "'--", '%00', 'a'.repeat(3_000), '..%2f..', '%ff'])(
    'with the id %s is a 4xx',
    async (id) => {
      for (const path of [`${team.path}/riders/${id}`, `/teams/${id}/riders`]) {
        const { status } = await team.mechanic.get(path);
        expect(status >= 400 && status < 500).toBe(true);
      }
    },
  );

  it('that names nothing stored is a 404 with problem details', async () => {
    const { body, headers } = await team.mechanic.get(`${team.path}/riders/${ID}`).expect(404);
    expect(headers['content-type']).toContain('application/problem+json');
    expect(body).toMatchObject({ status: 404, code: 'rider.not-found', errors: [] });
  });
});
