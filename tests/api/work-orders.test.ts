import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { startService, type TestService } from './support/service.js';
import { foundTeam, SETUP, type Stored, type TestTeam } from './support/team.js';

interface Step extends Stored {
  readonly end: string;
  readonly step: string;
  readonly doneAt: string | null;
}
interface Order extends Stored {
  readonly state: string;
  readonly from: Stored | null;
  readonly to: Stored;
  readonly parts: { end: string; spacersNeeded: number; spacersInStock: number }[];
  readonly steps: Step[];
}

let service: TestService;
let team: TestTeam;
let first: Stored;
beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.stop());
beforeEach(async () => {
  team = await foundTeam(service);
  first = await setUp({});
});

const setUp = async (change: object) =>
  (await team.mechanic.post(`${team.path}/setups`, { ...SETUP, ...change, bikeId: team.bike.id }).expect(201))
    .body as Stored;
const oneMore = () => setUp({ fork: { ...SETUP.fork, spacers: 3, pressurePsi: 60, reboundClicks: 9 } });
const make = (setupId: string) => team.mechanic.post(`${team.path}/work-orders`, { setupId });
const made = async (setupId: string) => (await make(setupId).expect(201)).body as Order;
const tick = (step: Stored | undefined, isDone = true) =>
  team.mechanic.post(`${team.path}/work-steps/${step?.id}/tick`, { isDone });
const ride = () =>
  team.riderMember
    .post(`${team.path}/runs`, { bikeId: team.bike.id, trackId: team.track.id, day: '2026-05-09' })
    .expect(201);
const stepOf = (order: Order, step: string) => order.steps.find((one) => one.step === step);
const forksInStock = async () =>
  (
    (await team.mechanic.get(`${team.path}/spacers`).expect(200)).body as {
      items: { unitKind: string; inStock: number }[];
    }
  ).items.find(({ unitKind }) => unitKind === 'fork')?.inStock;
const pitBike = async () =>
  ((await team.mechanic.get(`${team.path}/pit`).expect(200)).body as { bikes: Stored[] })
    .bikes[0] as Stored & {
    work: { id: string; done: number; all: number }[];
    fork: { spacers: object };
  };

describe('a work order', () => {
  it('leads from the set-up ridden to the new one, in the order that lets nobody open a cap under pressure', async () => {
    await ride();
    const to = await oneMore();
    const order = await made(to.id);
    expect(order).toMatchObject({
      state: 'open',
      bikeId: team.bike.id,
      from: { id: first.id },
      to: { id: to.id },
    });
    expect(order.steps.map(({ end, step }) => `${end} ${step}`)).toEqual([
      'fork write-down',
      'fork release-air',
      'fork open-cap',
      'fork move-spacers',
      'fork close-cap',
      'fork pump',
      'fork cycle',
      'fork set-rebound',
      'fork ride-slowly',
    ]);
    expect(stepOf(order, 'move-spacers')).toMatchObject({ spacersChange: 2, spacersThen: 3 });
    expect(stepOf(order, 'pump')?.['pressurePsi']).toBeCloseTo(60, 6);
    expect(stepOf(order, 'set-rebound')).toMatchObject({ clicksFrom: 8, clicksTo: 9 });
    expect(order.parts).toMatchObject([{ end: 'fork', spacersNeeded: 2, spacersInStock: 6 }]);
  });

  it("says the torque that the team has entered, and else leaves it to the unit's manual", async () => {
    const order = await made((await oneMore()).id);
    expect(stepOf(order, 'close-cap')).toMatchObject({ capTorqueNm: null });
    const care = `${team.path}/spring-units/${team.fork.id}/care`;
    await team.mechanic.post(care, { capTorqueNm: 28 }).expect(201);
    const { body } = await team.coach.get(`${team.path}/work-orders/${order.id}`).expect(200);
    expect(stepOf(body as Order, 'close-cap')).toMatchObject({ capTorqueNm: 28 });
  });

  it('is ticked step by step, by whom and when, and is done with the last', async () => {
    let order = await made((await oneMore()).id);
    for (const step of order.steps) order = (await tick(step).expect(201)).body as Order;
    expect(order.state).toBe('done');
    expect(order.steps[0]).toMatchObject({ doneByName: 'Person', doneAt: expect.any(String) });
    order = (await tick(order.steps[0], false).expect(201)).body as Order;
    expect(order.state).toBe('open');
    expect(order.steps[0]).toMatchObject({ doneAt: null, doneByName: null });
  });

  it('moves spacers in stock with the step that moves them, once, and back when it is not done after all', async () => {
    const order = await made((await oneMore()).id);
    const step = stepOf(order, 'move-spacers');
    expect(await pitBike()).toMatchObject({
      work: [{ id: order.id, done: 0, all: 9 }],
      fork: { spacers: { needed: 2, inStock: 6, isShort: false } },
    });
    await Promise.all([tick(step), tick(step), tick(step)]);
    expect(await forksInStock()).toBe(4);
    expect(await pitBike()).toMatchObject({ fork: { spacers: { needed: 0, inStock: 4 } } });
    await tick(step, false).expect(201);
    await tick(step, false).expect(201);
    expect(await forksInStock()).toBe(6);
    await tick(step).expect(201);
    expect(await forksInStock()).toBe(4);
  });

  it('is not ticked where the spacers it needs do not lie there', async () => {
    const order = await made((await oneMore()).id);
    const { kind: unitKind, spacerVolumeMl } = team.fork as unknown as {
      kind: string;
      spacerVolumeMl: number;
    };
    const count = { unitKind, spacerVolumeMl, reason: 'counted', spacers: 1 };
    await team.mechanic.post(`${team.path}/spacer-movements`, count).expect(201);
    expect(await pitBike()).toMatchObject({ fork: { spacers: { needed: 2, isShort: true } } });
    const { body } = await tick(stepOf(order, 'move-spacers')).expect(409);
    expect(body).toMatchObject({ code: 'spacers.short' });
  });

  it('begins at the work done last where nobody has ridden since', async () => {
    const second = await oneMore();
    for (const step of (await made(second.id)).steps) await tick(step).expect(201);
    const third = await setUp({ fork: { ...SETUP.fork, spacers: 0 } });
    expect(await made(third.id)).toMatchObject({ from: { id: second.id } });
  });

  it('is replaced by a newer set-up, and waits no longer', async () => {
    const order = await made((await oneMore()).id);
    await setUp({ reason: 'Back again.' });
    const { body } = await team.mechanic.get(`${team.path}/work-orders/${order.id}`).expect(200);
    expect(body).toMatchObject({ state: 'replaced' });
    expect((await pitBike()).work).toEqual([]);
  });

  it('is refused where there is one, where it was ridden, and where nothing is to be done', async () => {
    const to = await oneMore();
    const once = () => make(to.id).set('idempotency-key', 'order').expect(201);
    expect((await once()).body).toEqual((await once()).body);
    expect((await make(to.id).expect(409)).body).toMatchObject({ code: 'work-order.exists' });
    await ride();
    const same = await setUp({ fork: { ...SETUP.fork, spacers: 3, pressurePsi: 60, reboundClicks: 9 } });
    expect((await make(same.id).expect(409)).body).toMatchObject({ code: 'work-order.nothing-to-do' });
    const ridden = await setUp({});
    await ride();
    expect((await make(ridden.id).expect(409)).body).toMatchObject({ code: 'work-order.nothing-to-do' });
  });

  it('is for the mechanic to make and tick, for the coach to read, not for riders or another team', async () => {
    const order = await made((await oneMore()).id);
    await team.coach.get(`${team.path}/work-orders?bikeId=${team.bike.id}`).expect(200);
    await team.coach.post(`${team.path}/work-steps/${order.steps[0]?.id}/tick`, { isDone: true }).expect(403);
    await team.riderMember.get(`${team.path}/work-orders/${order.id}`).expect(403);
    const other = await foundTeam(service, 'Team 2');
    await other.mechanic.get(`${other.path}/work-orders/${order.id}`).expect(404);
    await other.mechanic
      .post(`${other.path}/work-steps/${order.steps[0]?.id}/tick`, { isDone: true })
      .expect(404);
    await tick(order.steps[0], 'yes' as never).expect(422);
    await make('1').expect(422);
  });
});
