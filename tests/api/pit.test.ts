import { Client } from 'pg';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { startService, type TestService } from './support/service.js';
import { foundTeam, SETUP, type Stored, type TestTeam } from './support/team.js';
import { planBody } from './support/test-plan.js';
import { without } from './support/without.js';

interface PitEnd {
  readonly unitId: string;
  readonly hasLimits: boolean;
  readonly today: { pumpToPsi: number | null; leftAlonePsi: number; whyNot: string | null } | null;
  readonly spacers: { needed: number; inStock: number; isShort: boolean };
}
interface PitBike {
  readonly bikeId: string;
  readonly setup: Stored | null;
  readonly previousSetup: Stored | null;
  readonly fork: PitEnd;
  readonly shock: PitEnd;
  readonly decision: Stored | null;
  readonly plans: Stored[];
  readonly lastRun: Stored | null;
}
interface Pit {
  readonly air: Stored | null;
  readonly bikes: PitBike[];
}

type Today = PitEnd['today'];
/** What the rider's phone computes by itself, so that it knows it without signal. */
interface Phone {
  readonly airToday: (altitudeM: number, typedC: number | null) => { temperatureC: number };
  readonly pumpTo: unknown;
  readonly todaysPressure: (
    setup: unknown,
    fill: unknown,
    end: unknown,
    air: unknown,
    rule: unknown,
  ) => Today;
}
const phoneModule = async (path: string) =>
  (await import(new URL(`../../apps/dashboard/src/${path}`, import.meta.url).href)) as Phone;

/** The set-up as it was pumped in the workshop, in the valley and in the warm. */
const FILLED = { ...SETUP, filledAltitudeM: 420, filledTemperatureC: 21 };

let service: TestService;
let team: TestTeam;
beforeAll(async () => {
  service = await startService();
  team = await foundTeam(service);
});
afterAll(() => service.stop());

const pit = async (query = '', of = team) =>
  (await of.mechanic.get(`${of.path}/pit?${query}`).expect(200)).body as Pit;
const bikeOf = async (query = '', of = team): Promise<PitBike> => {
  const bike = (await pit(query, of)).bikes.find(({ bikeId }) => bikeId === of.bike.id);
  if (!bike) throw new Error('The bike is not in the pit.');
  return bike;
};
const setUp = async (change: object, of = team) =>
  (await of.mechanic.post(`${of.path}/setups`, { ...FILLED, ...change, bikeId: of.bike.id }).expect(201))
    .body as Stored;
const logRun = async (run: object = {}) => {
  const body = { bikeId: team.bike.id, trackId: team.track.id, day: '2026-05-09', ...run };
  return (await team.riderMember.post(`${team.path}/runs`, body).expect(201)).body as Stored;
};

describe('the pit', () => {
  it('shows a bike that nobody has set up as such', async () => {
    expect(await pit()).toMatchObject({
      air: null,
      bikes: [
        {
          bikeId: team.bike.id,
          name: 'Bike 1',
          riderName: 'Rider A',
          setup: null,
          previousSetup: null,
          decision: null,
          plans: [],
          lastRun: null,
          fork: { unitName: 'Fork 1', hasLimits: true, today: null, spacers: { needed: 0, inStock: 6 } },
        },
      ],
    });
  });

  it('shows what is in it now and before, the open decision, and the newest run', async () => {
    const before = await setUp({});
    const now = await setUp({ fork: { ...SETUP.fork, pressurePsi: 68 }, reason: 'Higher under braking.' });
    await logRun({ timeS: 190 });
    const run = await logRun({ timeS: 187.5 });
    const bike = await bikeOf();
    expect(bike.setup).toEqual(now);
    expect(bike.previousSetup).toEqual(before);
    expect(bike.decision).toMatchObject({
      reason: 'Higher under braking.',
      toSetupId: now.id,
      outcome: null,
    });
    expect(bike.lastRun).toMatchObject({
      id: run.id,
      day: '2026-05-09',
      timeS: 187.5,
      isVoid: false,
      trackName: 'Quarry Stairs',
      setupId: now.id,
    });
  });

  it('tells when the decision was judged, and that the run was void', async () => {
    const { decision, lastRun } = await bikeOf();
    const list = (await team.mechanic.get(`${team.path}/decisions?limit=1`).expect(200)).body as {
      items: Stored[];
    };
    const version = list.items[0]?.version;
    await team.mechanic
      .put(`${team.path}/decisions/${decision?.id}/outcome`, { outcome: 'kept', note: 'Better.' }, version)
      .expect(200);
    await team.mechanic.post(`${team.path}/runs/${lastRun?.id}/void`, { reason: 'Puncture.' }).expect(200);
    expect(await bikeOf()).toMatchObject({ decision: { outcome: 'kept' }, lastRun: { isVoid: true } });
  });

  it.each([
    ['the usual temperature of the altitude', null],
    ['a typed temperature', -3.5],
    ['warmth', 31],
  ])("says what to pump to as the rider's phone does, at %s", async (_, typed) => {
    const setup = await setUp({ reason: 'Pumped in the workshop.' });
    const { body: ends } = await team.riderMember
      .get(`${team.path}/bikes/${team.bike.id}/ends?trackId=${team.track.id}`)
      .expect(200);
    const { airToday } = await phoneModule('features/ride/model/todays-air.ts');
    const { pumpTo } = await phoneModule('app/pump-to.ts');
    const { todaysPressure } = await phoneModule('app/todays-pressure.ts');
    const air = airToday(1_450, typed);
    const query = `trackId=${team.track.id}${typed === null ? '' : `&airTemperatureC=${typed}`}`;
    const read = await pit(query);
    expect(read.air).toMatchObject({
      trackId: team.track.id,
      altitudeM: 1_450,
      airTemperatureC: air.temperatureC,
      isTemperatureAssumed: typed === null,
    });
    const bike = await bikeOf(query);
    for (const end of ['fork', 'shock'] as const) {
      const phone = todaysPressure(setup, setup[end], (ends as Stored)[end], air, pumpTo);
      expect(phone?.pumpToPsi, end).toEqual(expect.any(Number));
      // The phone gets the unit in mm and mL and the service has it in metres: rounding, and no more.
      expect(bike[end].today?.pumpToPsi, end).toBeCloseTo(phone?.pumpToPsi ?? Number.NaN, 6);
      expect(bike[end].today?.leftAlonePsi, end).toBeCloseTo(phone?.leftAlonePsi ?? Number.NaN, 6);
      expect(bike[end].today?.whyNot, end).toBeNull();
    }
  });

  it('corrects nothing that was pumped at the track', async () => {
    await setUp({ filledAltitudeM: null, filledTemperatureC: null, reason: 'At the track.' });
    const bike = await bikeOf();
    expect([bike.fork.today, bike.shock.today]).toEqual([null, null]);
  });

  it('recommends nothing without the limits of the unit, nor for another unit than the one set up', async () => {
    const open = await foundTeam(service, 'Team without limits');
    await setUp({}, open);
    const fork = without(open.fork, ['id', 'version', 'spacersInStock']);
    await open.mechanic
      .put(`${open.path}/spring-units/${open.fork.id}`, { ...fork, maxPressurePsi: null }, 1)
      .expect(200);
    const query = `trackId=${open.track.id}`;
    expect((await bikeOf(query, open)).fork).toMatchObject({
      hasLimits: false,
      today: { pumpToPsi: null, whyNot: 'no limits' },
    });
    const { body } = await open.mechanic
      .post(`${open.path}/spring-units`, { ...fork, name: 'Spare fork' })
      .expect(201);
    const bike = without(open.bike, ['id', 'version']);
    await open.mechanic
      .put(`${open.path}/bikes/${open.bike.id}`, { ...bike, forkUnitId: (body as Stored).id }, 1)
      .expect(200);
    expect((await bikeOf(query, open)).fork.today).toMatchObject({ pumpToPsi: null, whyNot: 'another unit' });
  });

  it('shows the plan under way and the spacers it needs against stock', async () => {
    const planned = await foundTeam(service, 'Team with a plan');
    const after = await setUp({ fork: { ...SETUP.fork, spacers: 4 } }, planned);
    const before = await setUp({}, planned);
    await planned.mechanic
      .post(`${planned.path}/test-plans`, planBody(planned, { before, after }))
      .expect(201);
    const bike = await bikeOf('', planned);
    expect(bike.plans).toMatchObject([
      { name: 'Does one spacer more help?', riderId: planned.rider.id, ridden: 0, left: 8 },
    ]);
    expect(bike.fork.spacers).toEqual({ needed: 3, inStock: 6, isShort: false });
    expect(bike.shock.spacers).toEqual({ needed: 0, inStock: 6, isShort: false });
  });

  it('counts no spacers of another unit than the one in the bike: what a set-up says is in its own unit', async () => {
    const swapped = await foundTeam(service, 'Team with a spare fork');
    const { mechanic, path } = swapped;
    const after = await setUp({ fork: { ...SETUP.fork, spacers: 4 } }, swapped);
    const before = await setUp({}, swapped);
    await mechanic.post(`${path}/test-plans`, planBody(swapped, { before, after })).expect(201);
    const spare = { ...without(swapped.fork, ['id', 'version', 'spacersInStock']), name: 'Spare fork' };
    const { body } = await mechanic.post(`${path}/spring-units`, spare).expect(201);
    const mount = async (forkUnitId: string, version: number) => {
      const bike = { ...without(swapped.bike, ['id', 'version']), forkUnitId };
      await mechanic.put(`${path}/bikes/${swapped.bike.id}`, bike, version).expect(200);
    };
    await mount((body as Stored).id, 1);
    await setUp({ fork: { ...SETUP.fork, spacers: 2 }, reason: 'The spare fork.' }, swapped);
    expect((await bikeOf('', swapped)).fork.spacers).toMatchObject({ needed: 0 });
    await mount(swapped.fork.id, 2);
    const { fork, shock } = await bikeOf('', swapped);
    expect(fork).toMatchObject({ unitId: swapped.fork.id, spacers: { needed: 4 } });
    expect(shock.spacers).toMatchObject({ needed: 0 });
  });

  it('is for mechanics and coaches; a rider is refused', async () => {
    await team.coach.get(`${team.path}/pit`).expect(200);
    await team.riderMember.get(`${team.path}/pit`).expect(403);
    const other = await foundTeam(service, 'Team 2');
    await other.mechanic.get(`${team.path}/pit`).expect(404);
    await team.mechanic.get(`${team.path}/pit?trackId=${other.track.id}`).expect(404);
    expect(JSON.stringify(await pit('', other))).not.toContain(team.bike.id);
  });

  it.each(['airTemperatureC=x', 'airTemperatureC=90', 'trackId=1'])('refuses %s', async (query) => {
    await team.mechanic.get(`${team.path}/pit?${query}`).expect(422);
  });

  it('takes as many statements for a fleet as for one bike', async () => {
    const statements = async () => {
      const asked = vi.spyOn(Client.prototype, 'query');
      await pit();
      const count = asked.mock.calls.length;
      asked.mockRestore();
      return count;
    };
    const one = await statements();
    const bike = without(team.bike, ['id', 'version']);
    for (const name of ['Bike 2', 'Bike 3', 'Bike 4']) {
      const { body } = await team.mechanic.post(`${team.path}/bikes`, { ...bike, name }).expect(201);
      const message = { ...FILLED, bikeId: (body as Stored).id };
      await team.mechanic.post(`${team.path}/setups`, message).expect(201);
    }
    expect(one).toBeGreaterThan(5);
    expect(await statements()).toBe(one);
    expect((await pit()).bikes).toHaveLength(4);
  });
});
