import { readFileSync } from 'node:fs';
import type { Response } from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readDocument, resolved, routesOf, type Method, type Schema } from './support/open-api.js';
import { asOwner } from './support/owner.js';
import { startService, type TestService } from './support/service.js';
import { foundTeam, invite, script, type Stored, type TestTeam } from './support/team.js';
import { planBody, twoSetups } from './support/test-plan.js';
import { enterWorkshop } from './support/workshop.js';

/** The id of nothing anywhere: what a foreign id must be answered like. */
const NOTHING = '01990b5e-7c3a-7b1e-9f52-3a6f0d2c4e11';
/** Part of every name in the other team: no answer may hold it. */
const FOREIGN = 'Foreign';

const api = readDocument();
const ROUTES = routesOf(api).filter(({ path, streams }) => path.includes('{teamId}') && !streams);

/** One place of a request where an id goes: in the path, in the query string or somewhere in the body. */
interface Place {
  readonly route: string;
  readonly method: Method;
  readonly path: string;
  readonly where: string;
  readonly body: Schema | undefined;
}

const PLACES: Place[] = ROUTES.flatMap(({ method, path, body }) => {
  const place = (where: string): Place => ({ route: `${method} ${path}`, method, path, where, body });
  const inPath = [...path.matchAll(/\{(\w*[iI]d)\}/g)].map(([, name]) => `path ${name}`);
  return [
    ...inPath.filter((name) => name !== 'path teamId').map(place),
    ...queryIds(method, path).map((name) => place(`query ${name}`)),
    ...(body ? idsIn(body, 'body').map(place) : []),
  ];
});

let service: TestService;
let team: TestTeam;
let own: Map<string, string>;
let foreign: Map<string, string>;

beforeAll(async () => {
  service = await startService();
  team = await foundTeam(service);
  const other = await foundTeam(service, `${FOREIGN} team`);
  own = await idsOf(team);
  foreign = await idsOf(other);
  for (const table of ['rider', 'bike', 'track', 'spring_unit', 'test_plan', 'api_token']) {
    await asOwner(service, `update ${table} set name = '${FOREIGN} ' || name where team_id = $1`, other.id);
  }
});
afterAll(() => service.stop());

/** An id of each kind of thing in the team, by the names that fields and paths give it. */
async function idsOf(one: TestTeam): Promise<Map<string, string>> {
  const { mechanic, path, bike, track, rider, fork, shock } = one;
  const setups = await twoSetups(one);
  const run = { bikeId: bike.id, trackId: track.id, day: '2026-05-09', fork: { travelLeftMm: 18 } };
  const stored = (await mechanic.post(`${path}/runs`, run).expect(201)).body as Stored;
  const plan = (await mechanic.post(`${path}/test-plans`, planBody(one, setups)).expect(201)).body as Stored;
  await script(service, one, ['read']);
  await invite(one, { role: 'coach' });
  const workshop = await enterWorkshop(one);
  const first = async (things: string) => {
    const { body } = await mechanic.get(`${path}/${things}`).expect(200);
    return ((Array.isArray(body) ? body : (body as { items: unknown[] }).items) as Stored[])[0];
  };
  const members = await first('members');
  const baselines = await asOwner<{ id: string }>(
    service,
    'select id from baseline where team_id = $1',
    one.id,
  );
  return new Map([
    ...workshop,
    ['bikeId', bike.id],
    ['bikes', bike.id],
    ['trackId', track.id],
    ['tracks', track.id],
    ['riderId', rider.id],
    ['riders', rider.id],
    ['riderIds', rider.id],
    ['forkUnitId', fork.id],
    ['shockUnitId', shock.id],
    ['setupId', setups.before.id],
    ['currentSetupId', setups.before.id],
    ['setups', setups.before.id],
    ['sessionId', stored['sessionId'] as string],
    ['sessions', stored['sessionId'] as string],
    ['runId', stored.id],
    ['runs', stored.id],
    ['test-plans', plan.id],
    ['planId', plan.id],
    ['testPlanId', plan.id],
    ['accountId', members?.['accountId'] as string],
    ['members', members?.id ?? ''],
    ['decisions', (await first('decisions'))?.id ?? ''],
    ['tokens', (await first('tokens'))?.id ?? ''],
    ['baselines', baselines[0]?.id ?? plan.id],
    ['baselineId', baselines[0]?.id ?? plan.id],
  ]);
}

/** The names of the ids that a route takes in its query string, but for the place in a list. */
function queryIds(method: string, path: string): string[] {
  const document = JSON.parse(
    readFileSync(new URL('../../apps/api/openapi.json', import.meta.url), 'utf8'),
  ) as {
    paths: Record<string, Record<string, { parameters?: { name: string; in: string; schema?: unknown }[] }>>;
  };
  const parameters = document.paths[`/api/v1${path}`]?.[method]?.parameters ?? [];
  return parameters
    .filter((parameter) => parameter.in === 'query' && JSON.stringify(parameter).includes('"uuid"'))
    .map(({ name }) => name)
    .filter((name) => name !== 'cursor');
}

type IdSchema = Schema & { readonly format?: string };

function idsIn(given: Schema, at: string): string[] {
  const schema = resolved(api, given) as IdSchema;
  if (schema.format === 'uuid') return [at];
  if (schema.items) return idsIn(schema.items, `${at}.0`);
  return Object.entries(schema.properties ?? {}).flatMap(([name, field]) => idsIn(field, `${at}.${name}`));
}

/** A body of the document's examples with the team's own ids, but for the one place. */
function bodyWith(given: Schema, at: string, wanted: { where: string; id: string }): unknown {
  const schema = resolved(api, given) as IdSchema;
  if (schema.format === 'uuid') {
    const name = at.split('.').findLast((part) => part !== '0') ?? '';
    return at === wanted.where ? wanted.id : (own.get(name) ?? null);
  }
  if (schema.items && schema.example === undefined) return [bodyWith(schema.items, `${at}.0`, wanted)];
  if (!schema.properties) return schema.example ?? null;
  return Object.fromEntries(
    Object.entries(schema.properties).map(([name, field]) => [
      name,
      bodyWith(field, `${at}.${name}`, wanted),
    ]),
  );
}

/** The answer to the mechanic, with one id in its place and the team's own in all others. */
async function answerTo({ method, path, where, body }: Place, id: string, version = 1): Promise<Response> {
  const things = path.split('/')[3] ?? '';
  const filled = path
    .replace('{teamId}', team.id)
    .replace('{end}', 'fork')
    .replaceAll(/\{(\w+)\}/g, (_, name: string) => {
      return where === `path ${name}` ? id : (own.get(name === 'id' ? things : name) ?? NOTHING);
    });
  const query = queryIds(method, path)
    .filter((name) => where === `query ${name}`)
    .map((name) => `${name}=${id}`);
  const request = team.mechanic.send(method, query.length > 0 ? `${filled}?${query.join('&')}` : filled);
  if (method === 'put') void request.set('if-match', `"${version}"`);
  return body ? request.send(bodyWith(body, 'body', { where, id }) as object) : request;
}

const foreignId = ({ path, where }: Place): string | undefined => {
  const name = where.split(/[ .]/).findLast((part) => part !== '0') ?? '';
  return foreign.get(name === 'id' ? (path.split('/')[3] ?? '') : name);
};

/** The answer in words that do not change from one request to the next. */
const words = ({ text }: Response): string =>
  text
    .replaceAll(/[\da-f]{8}-[\da-f]{4}-[\da-f]{4}-[\da-f]{4}-[\da-f]{12}/g, 'ID')
    .replaceAll(/"version":\d+/g, '"version":V')
    .replaceAll(/\d{4}-\d\d-\d\dT[\d:.]+Z/g, 'TIME');

describe("another team's id", () => {
  it('is tried in every place of every route that takes one', () => {
    expect(PLACES.length).toBeGreaterThan(80);
    const unknown = PLACES.filter((place) => foreignId(place) === undefined);
    expect(unknown.map(({ route, where }) => `${route}: ${where}`)).toEqual([]);
  });

  it.each(PLACES)('is answered as the id of nothing: $route, $where', async (place) => {
    const nothing = await answerTo(place, NOTHING);
    // A change that ignores the id was made by the first request.
    const { version } = nothing.body as { version?: number };
    const others = await answerTo(place, foreignId(place) ?? '', version);
    expect(others.text).not.toContain(FOREIGN);
    expect([others.status, words(others)]).toEqual([nothing.status, words(nothing)]);
    if (place.where.startsWith('path')) expect([404, 422]).toContain(others.status);
    expect(others.status).toBeLessThan(500);
  });
});
