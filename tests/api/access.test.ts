import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Member } from './support/member.js';
import { call, readDocument, routesOf, type Method } from './support/open-api.js';
import { startService, type TestService } from './support/service.js';
import { foundTeam, script, SETUP, type Stored, type TestTeam } from './support/team.js';
import { planBody, twoSetups } from './support/test-plan.js';
import { without } from './support/without.js';
import { enterWorkshop } from './support/workshop.js';

const api = readDocument();
const ROUTES = routesOf(api).filter(({ path }) => path.includes('{teamId}'));

let service: TestService;
let team: TestTeam;
let other: TestTeam;

beforeAll(async () => {
  service = await startService();
  team = await foundTeam(service);
  other = await foundTeam(service, 'Team 2');
});
afterAll(() => service.stop());

describe("another team's things", () => {
  const ids = new Map<string, string>();

  beforeAll(async () => {
    const { mechanic, path, bike, track } = other;
    const setup = (await mechanic.post(`${path}/setups`, { ...SETUP, bikeId: bike.id }).expect(201))
      .body as Stored;
    const run = { bikeId: bike.id, trackId: track.id, day: '2026-05-09', fork: { travelLeftMm: 18 } };
    const stored = (await mechanic.post(`${path}/runs`, run).expect(201)).body as Stored;
    ids
      .set('setups', setup.id)
      .set('runs', stored.id)
      .set('sessions', stored['sessionId'] as string);
    ids.set('riders', other.rider.id).set('bikes', bike.id).set('tracks', track.id);
    for (const [things, id] of await enterWorkshop(other)) ids.set(things, id);
    const plan = planBody(other, await twoSetups(other));
    ids.set('test-plans', ((await mechanic.post(`${path}/test-plans`, plan).expect(201)).body as Stored).id);
    const { body } = await mechanic.get(`${path}/decisions`).expect(200);
    ids.set('decisions', (body as { items: Stored[] }).items[0]?.id ?? '');
    const members = (await mechanic.get(`${path}/members`).expect(200)).body as Stored[];
    ids.set('members', members[0]?.id ?? '');
    await script(service, other, ['read']);
    const tokens = (await mechanic.get(`${path}/tokens`).expect(200)).body as Stored[];
    ids.set('tokens', tokens[0]?.id ?? '');
  });

  const single = ROUTES.filter(({ path }) => /\/\{(id|trackId)\}/.test(path) && !path.includes('baselines'));

  it.each(single)('are not there by their ids: $method $path', async (route) => {
    const things = route.path.split('/')[3] ?? '';
    const id = ids.get(things) ?? '';
    expect(id).not.toBe('');
    const path = route.path.replace(/\{(id|trackId)\}/, id);
    const { status } = await call(api, team.mechanic, { ...route, path }, team.id);
    expect(status).toBe(404);
  });

  it.each([
    ['runs', { bikeId: 'bikes', trackId: 'own', day: '2026-05-09' }],
    ['runs', { bikeId: 'own', trackId: 'tracks', day: '2026-05-09' }],
    ['runs', { bikeId: 'own', sessionId: 'sessions' }],
    ['runs', { bikeId: 'own', trackId: 'own', day: '2026-05-09', setupId: 'setups' }],
    ['runs', { bikeId: 'own', trackId: 'own', day: '2026-05-09', riderId: 'riders' }],
    ['setups', { ...SETUP, bikeId: 'bikes' }],
    ['setups', { ...SETUP, bikeId: 'own', trackId: 'tracks' }],
    ['sessions', { trackId: 'tracks', day: '2026-05-09', condition: 'dry' }],
    ['invitations', { role: 'rider', riderId: 'riders' }],
  ])('cannot be referred to by %s: %o', async (things, wish) => {
    await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: team.bike.id }).expect(201);
    const own: Record<string, string> = { bikeId: team.bike.id, trackId: team.track.id };
    const body = Object.fromEntries(
      Object.entries(wish).map(([field, value]) => [
        field,
        value === 'own' ? own[field] : (ids.get(String(value)) ?? value),
      ]),
    );
    const { status } = await team.mechanic.post(`${team.path}/${things}`, body);
    expect([404, 409, 422]).toContain(status);
  });
});

describe('a rider', () => {
  let otherRider: Stored;
  let otherBike: Stored;

  beforeAll(async () => {
    const { mechanic, path, fork, shock } = team;
    const create = async (things: string, body: object) =>
      (await mechanic.post(`${path}/${things}`, body).expect(201)).body as Stored;
    otherRider = await create('riders', { name: 'Rider B', readyMassKg: 70 });
    const { body: own } = await mechanic.get(`${path}/bikes/${team.bike.id}`);
    const bike = without(own as Stored, ['id', 'version']);
    const parts = { riderId: otherRider.id, forkUnitId: fork.id, shockUnitId: shock.id };
    otherBike = await create('bikes', { ...bike, ...parts, name: 'Bike 2' });
    await create('setups', { ...SETUP, bikeId: otherBike.id });
    await create('setups', { ...SETUP, bikeId: team.bike.id });
    const on = { trackId: team.track.id, day: '2026-05-10' };
    await create('runs', { ...on, bikeId: otherBike.id });
    await create('runs', { ...on, bikeId: team.bike.id });
  });

  it.each(['riders', 'bikes', 'setups', 'runs', 'decisions'])('sees only their own %s', async (things) => {
    const count = async (member: Member) =>
      ((await member.get(`${team.path}/${things}`).expect(200)).body as { items: Stored[] }).items;
    const all = await count(team.mechanic);
    const own = await count(team.riderMember);
    expect(own.length).toBeGreaterThan(0);
    expect(own.length).toBeLessThan(all.length);
    for (const thing of all) {
      const { status } = await team.riderMember.get(`${team.path}/${things}/${thing.id}`);
      expect(status).toBe(own.some(({ id }) => id === thing.id) ? 200 : 404);
    }
  });

  it.each(['runs', 'decisions'])("gets no one else's %s in an export", async (things) => {
    const { text } = await team.riderMember.get(`${team.path}/${things}/export`).expect(200);
    expect(text).toContain('Rider A');
    expect(text).not.toContain('Rider B');
  });

  it.each([
    [
      'log a run',
      'post',
      'runs',
      () => ({ bikeId: otherBike.id, trackId: team.track.id, day: '2026-05-10' }),
    ],
    ['make a set-up', 'post', 'setups', () => ({ ...SETUP, bikeId: otherBike.id })],
  ] as const)("cannot %s on somebody else's bike", async (_, _method, things, body) => {
    await team.riderMember.post(`${team.path}/${things}`, body()).expect(404);
  });

  it("cannot log a run for somebody else, or void somebody else's", async () => {
    const run = { bikeId: team.bike.id, riderId: otherRider.id, trackId: team.track.id, day: '2026-05-10' };
    await team.riderMember.post(`${team.path}/runs`, run).expect(403);
    const { body } = await team.mechanic.get(`${team.path}/runs?riderId=${otherRider.id}`).expect(200);
    const [theirs] = (body as { items: Stored[] }).items;
    const path: string = `${team.path}/runs/${theirs?.id}/void`;
    await team.riderMember.post(path, { reason: 'Mine is better.' }).expect(404);
  });
});

it('answers routes that are not there with problem details', async () => {
  for (const method of ['get', 'post', 'put', 'delete'] as Method[]) {
    const { status, headers } = await team.mechanic.send(method, `${team.path}/nothing`);
    expect(status).toBe(404);
    expect(headers['content-type']).toContain('application/problem+json');
  }
});
