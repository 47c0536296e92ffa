import type { Response } from 'supertest';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { startService, type TestService } from './support/service.js';
import { BIKE, FORK, foundTeam, SETUP, type Stored, type TestTeam } from './support/team.js';

let service: TestService;
let team: TestTeam;
beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.stop());
beforeEach(async () => {
  team = await foundTeam(service);
});

const list = async (things: string) =>
  ((await team.mechanic.get(`${team.path}/${things}?limit=500`).expect(200)).body as { items: Stored[] })
    .items;

describe('a change', () => {
  const things = () => [
    { path: `riders/${team.rider.id}`, body: { name: 'Rider A', readyMassKg: 85 } },
    { path: `spring-units/${team.fork.id}`, body: { ...FORK, name: 'Fork 2' } },
    {
      path: `bikes/${team.bike.id}`,
      body: {
        ...BIKE,
        name: 'Bike 2',
        riderId: team.rider.id,
        forkUnitId: team.fork.id,
        shockUnitId: team.shock.id,
      },
    },
    { path: `tracks/${team.track.id}`, body: { name: 'Track 2', altitudeM: 900 } },
  ];

  it('needs the version that was read, and gives the next', async () => {
    for (const { path, body } of things()) {
      const at = `${team.path}/${path}`;
      const { headers } = await team.mechanic.get(at).expect(200);
      expect(headers['etag']).toMatch(/^"1\.[\w-]{16}"$/);
      await team.mechanic.put(at, body).expect(428);
      const changed = await team.mechanic
        .send('put', at)
        .set('if-match', String(headers['etag']))
        .send(body)
        .expect(200);
      expect(changed.headers['etag']).toMatch(/^"2\./);
      expect(changed.body).toMatchObject(rounded(body));
    }
  });

  it('of a version that somebody else has changed overwrites nothing', async () => {
    for (const { path, body } of things()) {
      const at = `${team.path}/${path}`;
      await team.mechanic.put(at, body, 1).expect(200);
      const { body: stored } = await team.mechanic.get(at);
      const late = await team.mechanic.put(at, { ...body, name: 'Late' }, 1).expect(412);
      expect(late.body).toMatchObject({ code: 'precondition.stale' });
      expect((await team.mechanic.get(at)).body).toEqual(stored);
    }
  });

  it('by many at once from the same version is the change of one', async () => {
    const at = `${team.path}/tracks/${team.track.id}`;
    const changes = Array.from({ length: 8 }, (_, index) =>
      team.mechanic.put(at, { name: `Track ${index}`, altitudeM: index }, 1),
    );
    const answers = await Promise.all(changes);
    expect(answers.map(({ status }) => status).toSorted()).toEqual([200, ...Array<number>(7).fill(412)]);
    const winner = answers.find(({ status }) => status === 200);
    expect((await team.mechanic.get(at)).body).toEqual(winner?.body);
  });

  it.each(['*', '2', '"x"', '"1", "2"', '""', '"1."', '"2.x"', '".x"', '"1.x y"'])(
    'with the If-Match %s is stale',
    async (tag) => {
      const change = team.mechanic.send('put', `${team.path}/tracks/${team.track.id}`).set('if-match', tag);
      await change.send({ name: 'Track 2', altitudeM: 900 }).expect(412);
    },
  );

  it('is not sent again to who has the answer already', async () => {
    const ask = (tag: string) =>
      team.mechanic.get(`${team.path}/tracks/${team.track.id}`).set('if-none-match', tag);
    const { headers } = await ask('"1"').expect(200);
    const unchanged = await ask(String(headers['etag'])).expect(304);
    expect(unchanged.text).toBe('');
    expect(unchanged.headers['etag']).toBe(headers['etag']);
  });
});

describe('a POST with an Idempotency-Key', () => {
  const track = { name: 'Track 9', altitudeM: 10 };
  const post = (key: string, body: object = track) =>
    team.mechanic.post(`${team.path}/tracks`, body).set('idempotency-key', key);

  it('stores once and answers the same again', async () => {
    const first = await post('a').expect(201);
    const second = await post('a').expect(201);
    expect(second.body).toEqual(first.body);
    expect(await list('tracks')).toHaveLength(2);
  });

  it('stores once when ten come at the same moment', async () => {
    await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: team.bike.id }).expect(201);
    const run = {
      bikeId: team.bike.id,
      trackId: team.track.id,
      day: '2026-05-09',
      fork: { travelLeftMm: 18 },
    };
    const answers = await Promise.all(
      Array.from({ length: 10 }, () =>
        team.riderMember.post(`${team.path}/runs`, run).set('idempotency-key', 'run'),
      ),
    );
    expect(answers.map(({ status }) => status)).toEqual(Array<number>(10).fill(201));
    expect(new Set(answers.map(({ body }) => (body as Stored).id)).size).toBe(1);
    expect(await list('runs')).toHaveLength(1);
    expect(await list('sessions')).toHaveLength(1);
  });

  it('is refused for another body or another path, and stores nothing', async () => {
    await post('a').expect(201);
    const { body } = await post('a', { ...track, altitudeM: 11 }).expect(409);
    expect(body).toMatchObject({ code: 'idempotency.key-reused' });
    const rider = { name: 'Rider B', readyMassKg: 70 };
    await team.mechanic.post(`${team.path}/riders`, rider).set('idempotency-key', 'a').expect(409);
    expect(await list('tracks')).toHaveLength(2);
    expect(await list('riders')).toHaveLength(1);
  });

  it('that was refused may be sent again, corrected, under the same key', async () => {
    const session = { trackId: team.rider.id, day: '2026-05-09', condition: 'dry' };
    const send = (body: object) =>
      team.mechanic.post(`${team.path}/sessions`, body).set('idempotency-key', 'a');
    await send(session).expect(404);
    await send({ ...session, trackId: team.track.id }).expect(201);
  });

  it('has keys of its own in each team and for each person', async () => {
    await post('a').expect(201);
    const another = { ...track, name: 'Track 10' };
    await team.coach.post(`${team.path}/tracks`, another).set('idempotency-key', 'a').expect(201);
    const other = await foundTeam(service, 'Team 2');
    await other.mechanic.post(`${other.path}/tracks`, track).set('idempotency-key', 'a').expect(201);
    expect(await list('tracks')).toHaveLength(3);
  });

  it('has a key of 1 to 200 characters', async () => {
    await post('').expect(400);
    await post('k'.repeat(201)).expect(400);
    await post('k'.repeat(200)).expect(201);
  });
});

describe('a write that is refused half-way', () => {
  beforeEach(async () => {
    await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: team.bike.id }).expect(201);
  });

  it('leaves no session behind when the run is refused', async () => {
    const run = { bikeId: team.bike.id, trackId: team.track.id, day: '2026-05-09' };
    const beyond = { ...run, fork: { travelLeftMm: 18 }, shock: { travelUsedMm: 66 } };
    await team.mechanic.post(`${team.path}/runs`, beyond).expect(422);
    expect(await list('sessions')).toEqual([]);
    expect(await list('runs')).toEqual([]);
  });

  it('leaves no set-up and no decision behind when the shock is refused', async () => {
    const beyond = { ...SETUP, bikeId: team.bike.id, shock: { pressurePsi: 301, spacers: 1 } };
    await team.mechanic.post(`${team.path}/setups`, beyond).expect(422);
    expect(await list('setups')).toHaveLength(1);
    const decisions = await list('decisions');
    expect(decisions).toHaveLength(1);
    expect(decisions[0]).toMatchObject({ outcome: null });
  });
});

describe('a list', () => {
  const create = (number: number) =>
    team.mechanic.post(`${team.path}/tracks`, { name: `Track ${number}`, altitudeM: number }).expect(201);

  it('is read page by page by its Link, each row once, while rows are added', async () => {
    for (let number = 0; number < 11; number += 1) await create(number);
    const before = (await list('tracks')).map(({ id }) => id);
    const seen: string[] = [];
    let path: string | undefined = `${team.path}/tracks?limit=3`;
    while (path) {
      const page: Response = await team.mechanic.get(path).expect(200);
      const { items, nextCursor } = page.body as { items: Stored[]; nextCursor: string | null };
      seen.push(...items.map(({ id }) => id));
      const link = page.headers['link'];
      expect(link === undefined).toBe(nextCursor === null);
      path = link && /<\/api\/v1([^>]+)>; rel="next"/.exec(link)?.[1];
      await create(100 + seen.length);
    }
    expect(seen).toEqual(before);
  });

  it('keeps its filter in the Link', async () => {
    await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: team.bike.id }).expect(201);
    for (let pressurePsi = 60; pressurePsi < 63; pressurePsi += 1) {
      const setup = { ...SETUP, bikeId: team.bike.id, fork: { ...SETUP.fork, pressurePsi } };
      await team.mechanic.post(`${team.path}/setups`, setup).expect(201);
    }
    const { headers } = await team.mechanic.get(`${team.path}/setups?bikeId=${team.bike.id}&limit=2`);
    expect(headers['link']).toContain(`bikeId=${team.bike.id}`);
  });

  it('starts with the newest', async () => {
    await create(1);
    const { body } = await create(2);
    expect((await list('tracks'))[0]).toEqual(body);
  });
});

/** Answers carry twelve digits: what more a conversion to SI units and back leaves is noise. */
const rounded = (value: object): object =>
  JSON.parse(JSON.stringify(value), (_, entry: unknown) =>
    typeof entry === 'number' ? Number(entry.toPrecision(12)) : entry,
  ) as object;
