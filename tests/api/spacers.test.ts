import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { asOwner } from './support/owner.js';
import { startService, type TestService } from './support/service.js';
import { FORK, foundTeam, type Stored, type TestTeam } from './support/team.js';

interface Stock {
  readonly unitKind: string;
  readonly spacerVolumeMl: number;
  readonly inStock: number;
  readonly unitIds: string[];
}

let service: TestService;
let team: TestTeam;
/** The size that the team's fork takes; the team has counted six. */
const SIZE = { unitKind: 'fork', spacerVolumeMl: FORK.spacerVolumeMl };
beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.stop());
beforeEach(async () => {
  team = await foundTeam(service);
});

const send = (movement: object, of = team) =>
  of.mechanic.post(`${of.path}/spacer-movements`, { ...SIZE, ...movement });
const move = async (movement: object) => (await send(movement).expect(201)).body as Stored;
const stocks = async () =>
  ((await team.mechanic.get(`${team.path}/spacers`).expect(200)).body as { items: Stock[] }).items;
const inStock = async () => (await stocks()).find(({ unitKind }) => unitKind === 'fork')?.inStock;

describe('spacers in stock', () => {
  it('are counted, and come and go by recorded movements', async () => {
    expect(await stocks()).toMatchObject([
      { unitKind: 'fork', inStock: 6, unitIds: [team.fork.id] },
      { unitKind: 'shock', inStock: 6, unitIds: [team.shock.id] },
    ]);
    expect(await move({ reason: 'put in', spacers: 2 })).toMatchObject({ change: -2, inStock: 4 });
    expect(await move({ reason: 'bought', spacers: 10 })).toMatchObject({ change: 10, inStock: 14 });
    expect(await move({ reason: 'counted', spacers: 11 })).toMatchObject({ change: -3, inStock: 11 });
    expect(await move({ reason: 'lost', spacers: 1 })).toMatchObject({ inStock: 10 });
    expect(await move({ reason: 'taken out', spacers: 3 })).toMatchObject({ inStock: 13 });
    const { body } = await team.coach.get(`${team.path}/spacer-movements?unitKind=fork`).expect(200);
    const { items } = body as { items: Stored[] };
    expect(items.map(({ change }) => change)).toEqual([3, -1, -3, 10, -2, 6]);
  });

  it('are the same at the unit, on the bench and in the pit', async () => {
    await move({ reason: 'put in', spacers: 1 });
    const unit = (await team.mechanic.get(`${team.path}/spring-units/${team.fork.id}`).expect(200)).body;
    const ends = (await team.mechanic.get(`${team.path}/bikes/${team.bike.id}/ends`).expect(200)).body as {
      fork: unknown;
    };
    const pit = (await team.mechanic.get(`${team.path}/pit`).expect(200)).body as {
      bikes: { fork: unknown }[];
    };
    expect(unit).toMatchObject({ spacersInStock: 5 });
    expect(ends.fork).toMatchObject({ spacersInStock: 5 });
    expect(pit.bikes[0]?.fork).toMatchObject({ spacers: { inStock: 5 } });
  });

  it('are shared by units that take the same size', async () => {
    await team.mechanic.post(`${team.path}/spring-units`, { ...FORK, name: 'Spare fork' }).expect(201);
    const [forks] = await stocks();
    expect(forks).toMatchObject({ inStock: 6 });
    expect(forks?.unitIds).toHaveLength(2);
  });

  it('are never fewer than none', async () => {
    const { body } = await send({ reason: 'put in', spacers: 7 }).expect(409);
    expect(body).toMatchObject({ code: 'spacers.short' });
    expect(await inStock()).toBe(6);
    const row = `insert into spacer_movement (team_id, id, unit_kind, spacer_size, number, change, in_stock, reason)
                 values ($1, gen_random_uuid(), 'fork', 1, 1, -1, -1, 'lost')`;
    await expect(asOwner(service, row, team.id)).rejects.toMatchObject({ code: '23514' });
  });

  it('are never taken twice by two at once', async () => {
    const answers = await Promise.all([1, 2, 3, 4].map(() => send({ reason: 'put in', spacers: 4 })));
    expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 409, 409, 409]);
    expect(await inStock()).toBe(2);
  });

  it('are moved once by a message that is sent twice', async () => {
    const once = () => send({ reason: 'bought', spacers: 5 }).set('idempotency-key', 'bought').expect(201);
    expect((await once()).body).toEqual((await once()).body);
    expect(await inStock()).toBe(11);
  });
});

describe('a wrong movement', () => {
  it('is reversed by another, once, and both stay', async () => {
    const { id } = await move({ reason: 'lost', spacers: 4 });
    const reverse = `${team.path}/spacer-movements/${id}/reverse`;
    const { body } = await team.mechanic.post(reverse, { note: 'They were in the van.' }).expect(201);
    expect(body).toMatchObject({ reason: 'reversed', change: 4, inStock: 6, reversesId: id });
    await team.mechanic.post(reverse, { note: 'Again.' }).expect(409);
    const back = `${team.path}/spacer-movements/${(body as Stored).id}/reverse`;
    await team.mechanic.post(back, { note: 'Back.' }).expect(409);
    const list = await team.mechanic.get(`${team.path}/spacer-movements?limit=2`).expect(200);
    expect((list.body as { items: Stored[] }).items).toMatchObject([
      { reversesId: id },
      { id, isReversed: true },
    ]);
  });

  it('is not reversed where that would leave fewer than none', async () => {
    const { id } = await move({ reason: 'bought', spacers: 4 });
    await move({ reason: 'put in', spacers: 9 });
    const { body } = await team.mechanic
      .post(`${team.path}/spacer-movements/${id}/reverse`, { note: 'Not bought.' })
      .expect(409);
    expect(body).toMatchObject({ code: 'spacers.short' });
    expect(await inStock()).toBe(1);
  });

  it.each([
    [{ reason: 'bought', spacers: 0 }, 'spacers'],
    [{ reason: 'bought', spacers: -1 }, 'spacers'],
    [{ reason: 'bought', spacers: 1.5 }, 'spacers'],
    [{ reason: 'reversed', spacers: 1 }, 'reason'],
    [{ reason: 'bought', spacers: 1, unitKind: 'frame' }, 'unitKind'],
    [{ reason: 'bought', spacers: 1, spacerVolumeMl: 0 }, 'spacerVolumeMl'],
  ])('is refused as %j', async (movement, field) => {
    const { body } = await send(movement).expect(422);
    expect((body as { errors: { field: string }[] }).errors.map((error) => error.field)).toContain(field);
  });
});

it('is for the mechanic to move, for the coach to read, and not for riders, nor for another team', async () => {
  const movement = { ...SIZE, reason: 'bought', spacers: 1 };
  await team.coach.post(`${team.path}/spacer-movements`, movement).expect(403);
  await team.riderMember.get(`${team.path}/spacers`).expect(403);
  const other = await foundTeam(service, 'Team 2');
  const { id } = await move({ reason: 'bought', spacers: 1 });
  await other.mechanic.post(`${other.path}/spacer-movements/${id}/reverse`, { note: 'Ours.' }).expect(404);
  expect(await inStock()).toBe(7);
});
