import {
  airSpring,
  forkLeverage,
  hitHeight,
  sprungMass,
  standardAtmosphere,
  type AirSpringUnit,
} from '@loamledger/spring';
import { gaugePascalFromPsi, radianFromDegrees } from '@loamledger/units';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { startService, type TestService } from './support/service.js';
import { BIKE, FORK, foundTeam, SETUP, SHOCK, type Stored, type TestTeam } from './support/team.js';

let service: TestService;
let team: TestTeam;
beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.stop());
beforeEach(async () => {
  team = await foundTeam(service);
});

interface Run extends Stored {
  readonly setupId: string;
  readonly orderInSession: number;
  readonly voided: { reason: string; readingsCount: boolean } | null;
  readonly fork: { hit: { kind: string; heightM: number; logSd: number } } | null;
}
interface Problem {
  readonly code: string;
  readonly errors: readonly { field: string; given: unknown; allowed: string }[];
}

const setUp = (change: object = {}) =>
  team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: team.bike.id, ...change });
const log = (change: object = {}) =>
  team.mechanic.post(`${team.path}/runs`, {
    bikeId: team.bike.id,
    trackId: team.track.id,
    day: '2026-05-09',
    ...change,
  });
const problemOf = ({ body }: { body: unknown }) => {
  const { code, errors } = body as Problem;
  return { code, field: errors[0]?.field, allowed: errors[0]?.allowed };
};
const list = async <Item = Stored>(things: string) =>
  ((await team.mechanic.get(`${team.path}/${things}?limit=500`).expect(200)).body as { items: Item[] }).items;

describe('a set-up', () => {
  it('is a new revision each time, with a decision record that says why', async () => {
    const first = (await setUp().expect(201)).body as Stored;
    const change = { fork: { pressurePsi: 70, spacers: 2 }, reason: 'Stay higher.', trackId: team.track.id };
    const second = (await setUp(change).expect(201)).body as Stored;
    expect(second).toMatchObject({
      revision: 2,
      previousId: first.id,
      fork: { unitId: team.fork.id, pressurePsi: 70, spacers: 2, reboundClicks: null },
      shock: { unitId: team.shock.id, pressurePsi: 180 },
    });
    const [open, closed] = await list('decisions');
    expect(open).toMatchObject({ reason: 'Stay higher.', trackId: team.track.id, outcome: null });
    expect(open).toMatchObject({ fromSetupId: first.id, toSetupId: second.id });
    expect(closed).toMatchObject({ reason: 'First ride.', outcome: 'superseded' });
  });

  it('taken back is a new revision equal to the earlier one, and its decision says so', async () => {
    const first = (await setUp().expect(201)).body as Stored;
    await setUp({ fork: { pressurePsi: 70, spacers: 2 } }).expect(201);
    const restore = () =>
      team.mechanic.post(`${team.path}/setups/${first.id}/restore`, { reason: 'Too harsh.' });
    const { body } = await restore().expect(201);
    expect(body).toMatchObject({ revision: 3, fork: first['fork'], shock: first['shock'] });
    const outcomes = (await list('decisions')).map((decision) => decision['outcome']);
    expect(outcomes).toEqual([null, 'taken back', 'superseded']);
    const again = `${team.path}/setups/${(body as Stored).id}/restore`;
    await team.mechanic.post(again, { reason: 'Again.' }).expect(409);
  });

  it.each([
    ['a pressure over the limit of the unit', { fork: { pressurePsi: 121, spacers: 1 } }, 'fork.pressurePsi'],
    ['a pressure under it', { fork: { pressurePsi: 39, spacers: 1 } }, 'fork.pressurePsi'],
    ['more spacers than the unit takes', { fork: { pressurePsi: 65, spacers: 6 } }, 'fork.spacers'],
    [
      'a pressure over the limit of the shock',
      { shock: { pressurePsi: 301, spacers: 1 } },
      'shock.pressurePsi',
    ],
    ['no shock on a bike that has one', { shock: null }, 'shock'],
    ['an altitude of filling without a temperature', { filledAltitudeM: 400 }, 'filledTemperatureC'],
    ['half a click', { fork: { pressurePsi: 65, spacers: 1, reboundClicks: 0.5 } }, 'fork.reboundClicks'],
  ])('is refused with %s', async (_, change, field) => {
    const { field: named, allowed } = problemOf(await setUp(change).expect(422));
    expect(named).toBe(field);
    expect(allowed).toBeTruthy();
    expect(await list('setups')).toEqual([]);
  });

  it('is accepted at the very limits of the unit', async () => {
    for (const pressurePsi of [40, 120]) await setUp({ fork: { pressurePsi, spacers: 5 } }).expect(201);
  });

  it('is refused with spacers that fill the chamber, where no limit was entered', async () => {
    const open = { ...FORK, name: 'Fork 2', maxSpacers: null, spacerVolumeMl: 40 };
    const fork = (await team.mechanic.post(`${team.path}/spring-units`, open).expect(201)).body as Stored;
    const parts = { riderId: team.rider.id, forkUnitId: fork.id, shockUnitId: team.shock.id };
    const bike = await team.mechanic.post(`${team.path}/bikes`, { ...BIKE, name: 'Bike 2', ...parts });
    const full = { bikeId: (bike.body as Stored).id, fork: { pressurePsi: 65, spacers: 6 } };
    expect(problemOf(await setUp(full).expect(422))).toMatchObject({
      code: 'setup.impossible-fill',
      field: 'fork.spacers',
    });
  });

  it('made by two at the same moment is two revisions', async () => {
    const answers = await Promise.all([setUp(), setUp(), setUp(), setUp()]);
    expect(answers.map(({ status }) => status)).toEqual([201, 201, 201, 201]);
    const revisions = answers.map(({ body }) => (body as Stored)['revision'] as number);
    expect(revisions.toSorted()).toEqual([1, 2, 3, 4]);
  });
});

describe('a decision', () => {
  it('gets its outcome once', async () => {
    await setUp().expect(201);
    const [decision] = await list('decisions');
    const path = `${team.path}/decisions/${decision?.id}/outcome`;
    await team.mechanic.put(path, { outcome: 'kept', note: 'Held up well.' }).expect(428);
    const { body } = await team.coach.put(path, { outcome: 'kept', note: 'Held up well.' }, 1).expect(200);
    expect(body).toMatchObject({ outcome: 'kept', outcomeNote: 'Held up well.', version: 2 });
    await team.mechanic.put(path, { outcome: 'superseded' }, 2).expect(409);
    expect((await list('decisions'))[0]).toMatchObject({ outcome: 'kept' });
  });
});

describe('a run', () => {
  beforeEach(async () => {
    await setUp().expect(201);
  });

  it('opens the session of its day and condition, and counts on in it for each rider', async () => {
    const first = (await log({ timeS: 187.4 }).expect(201)).body as Run;
    const second = (await log({ timeS: 186 }).expect(201)).body as Run;
    const wet = (await log({ condition: 'wet' }).expect(201)).body as Run;
    expect([first, second, wet].map((run) => run.orderInSession)).toEqual([1, 2, 1]);
    expect(await list('sessions')).toHaveLength(2);
    expect(first).toMatchObject({ riderId: team.rider.id, timeS: 187.4, fork: null, voided: null });
  });

  it('logged by many at once is numbered without a gap or a double', async () => {
    const answers = await Promise.all(Array.from({ length: 8 }, (_, index) => log({ timeS: 180 + index })));
    expect(answers.map(({ status }) => status)).toEqual(Array<number>(8).fill(201));
    const orders = answers.map(({ body }) => (body as Run).orderInSession);
    expect(orders.toSorted()).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(await list('sessions')).toHaveLength(1);
  });

  it('keeps the set-up that it was ridden with', async () => {
    const before = (await log().expect(201)).body as Run;
    await setUp({ fork: { pressurePsi: 70, spacers: 2 } }).expect(201);
    const after = (await log().expect(201)).body as Run;
    expect(after.setupId).not.toBe(before.setupId);
    expect((await list<Run>('runs')).find(({ id }) => id === before.id)?.setupId).toBe(before.setupId);
  });

  it.each([
    ['a fork reading beyond the stroke', { fork: { travelUsedMm: 170.1 } }, 'fork.travelUsedMm', '170 mm'],
    ['travel left beyond the stroke', { fork: { travelLeftMm: 171 } }, 'fork.travelLeftMm', '170 mm'],
    ['a shock reading beyond the stroke', { shock: { travelUsedMm: 65.2 } }, 'shock.travelUsedMm', '65 mm'],
    [
      'used and left that disagree',
      { fork: { travelUsedMm: 150, travelLeftMm: 30 } },
      'fork.travelLeftMm',
      '20 mm',
    ],
    ['a day that no calendar has', { day: '2026-02-30' }, 'day', 'YYYY-MM-DD'],
    ['neither a session nor a track', { trackId: undefined }, 'sessionId', 'trackId and day'],
    ['a rating of 6', { ratings: { support: 6 } }, 'ratings.support', '1 to 5'],
    ['a moment without an offset', { startedAt: '2026-05-09T10:30:00' }, 'startedAt', '2026-05-09T10:30:00Z'],
  ])('is refused with %s', async (_, change, field, allowed) => {
    const problem = problemOf(await log(change).expect(422));
    expect(problem).toMatchObject({ field, allowed: expect.stringContaining(allowed) as string });
    expect(await list('runs')).toEqual([]);
  });

  it("is refused on another team's bike, and on a set-up of another bike", async () => {
    const other = await foundTeam(service, 'Team 2');
    await log({ bikeId: other.bike.id }).expect(404);
    const parts = { riderId: team.rider.id, forkUnitId: team.fork.id, shockUnitId: team.shock.id };
    const { body } = await team.mechanic.post(`${team.path}/bikes`, { ...BIKE, name: 'Bike 2', ...parts });
    const { id } = body as Stored;
    const [setup] = await list('setups');
    expect(problemOf(await log({ bikeId: id, setupId: setup?.id }).expect(422)).field).toBe('setupId');
    expect(problemOf(await log({ bikeId: id }).expect(422)).code).toBe('run.no-setup');
  });

  it('is voided with a reason, stays, and counts again when it is restored', async () => {
    const { id } = (await log({ fork: { travelLeftMm: 18 } }).expect(201)).body as Run;
    const path = `${team.path}/runs/${id}`;
    await team.mechanic.post(`${path}/void`, {}).expect(422);
    const { body } = await team.riderMember.post(`${path}/void`, { reason: 'Slid out.' }).expect(200);
    expect(body).toMatchObject({ voided: { reason: 'Slid out.', readingsCount: false } });
    await team.mechanic.post(`${path}/void`, { reason: 'Again.' }).expect(409);
    expect((await list<Run>('runs'))[0]?.voided?.reason).toBe('Slid out.');
    const restored = await team.mechanic.post(`${path}/restore`).expect(200);
    expect((restored.body as Run).voided).toBeNull();
    await team.mechanic.post(`${path}/restore`).expect(409);
    await team.mechanic.put(path, { timeS: 1 }, 1).expect(404);
  });

  it('that was spoilt is void from the start', async () => {
    const { body } = await log({ spoilt: { reason: 'Missed a gate.', readingsCount: true } }).expect(201);
    expect((body as Run).voided).toMatchObject({ reason: 'Missed a gate.', readingsCount: true });
  });
});

describe('the hit height behind a ring reading', () => {
  /** The fork of the tests in the engine's own terms, made here from the same figures as the API got. */
  const engineFork = (positiveVolumeMl = FORK.positiveVolumeMl): AirSpringUnit => ({
    kind: 'fork',
    stroke: FORK.strokeMm / 1e3,
    boreArea: FORK.boreAreaMm2 / 1e6,
    shaftArea: FORK.shaftAreaMm2 / 1e6,
    positiveVolume: positiveVolumeMl / 1e6,
    spacerVolume: FORK.spacerVolumeMl / 1e6,
    maxSpacers: FORK.maxSpacers,
    negativeVolume: FORK.negativeVolumeMl / 1e6,
    transferPosition: FORK.transferPositionMm / 1e3,
    lowerLegVolume: FORK.lowerLegVolumeMl / 1e6,
    lowerLegArea: FORK.lowerLegAreaMm2 / 1e6,
    bumperLength: FORK.bumperLengthMm / 1e3,
    bumperEndForce: FORK.bumperEndForceN,
    damper: {
      lowSpeed: FORK.damperLowSpeedNsPerM,
      kneeSpeed: FORK.damperKneeSpeedMPerS,
      highSpeed: FORK.damperHighSpeedNsPerM,
    },
    sealFriction: FORK.sealFrictionN,
    thermalTime: { positive: 1.5, negative: 0.3, lowerLeg: 1 },
  });

  /** By the engine alone: 18 mm left under the first set-up at the track's altitude. */
  function heightByEngine(unit: AirSpringUnit): number {
    const { pressure, temperature } = standardAtmosphere(1_450);
    const spring = airSpring(unit, {
      gaugePressure: gaugePascalFromPsi(SETUP.fork.pressurePsi),
      spacers: SETUP.fork.spacers,
      ambientPressure: pressure,
      temperature,
    });
    const mass = sprungMass({
      riderMass: 84,
      bikeMass: BIKE.massKg,
      loadShare: 0.4,
      unsprungMass: BIKE.frontUnsprungMassKg,
    });
    const end = { sprungMass: mass, leverage: forkLeverage(radianFromDegrees(BIKE.headAngleDeg)) };
    const reading = { travelUsed: unit.stroke - 0.018, readingSd: 0.002 };
    const hit = hitHeight(spring, end, reading, { gaugeSd: gaugePascalFromPsi(1), massSd: 0 });
    if (hit.status !== 'solved') throw new Error(hit.message);
    return hit.height;
  }

  // Both go the same way; the API's figures went to SI units through the database and back to twelve digits.
  const RELATIVE_TOLERANCE = 1e-6;

  beforeEach(async () => {
    await setUp().expect(201);
  });

  it('is the one that the engine gives', async () => {
    const { body } = await log({ fork: { travelLeftMm: 18 } }).expect(201);
    const height = heightByEngine(engineFork());
    expect((body as Run).fork?.hit.heightM).toBeGreaterThan(height * (1 - RELATIVE_TOLERANCE));
    expect((body as Run).fork?.hit.heightM).toBeLessThan(height * (1 + RELATIVE_TOLERANCE));
    expect((body as Run).fork?.hit.kind).toBe('exact');
  });

  it("is a bound where the ring says no more than 'at least' or 'at most'", async () => {
    const kind = async (travelUsedMm: number) =>
      ((await log({ fork: { travelUsedMm } }).expect(201)).body as Run).fork?.hit.kind;
    expect(await kind(170)).toBe('at-least');
    expect(await kind(5)).toBe('at-most');
  });

  it('follows a changed figure of the unit once the demand of the track is asked for', async () => {
    const { id, fork } = (await log({ fork: { travelLeftMm: 18 } }).expect(201)).body as Run;
    const smaller = { ...FORK, positiveVolumeMl: FORK.positiveVolumeMl - 10 };
    await team.mechanic.put(`${team.path}/spring-units/${team.fork.id}`, smaller, 1).expect(200);
    const height = async () =>
      ((await team.mechanic.get(`${team.path}/runs/${id}`).expect(200)).body as Run).fork?.hit.heightM ?? NaN;
    expect(await height()).toBe(fork?.hit.heightM);
    await team.mechanic.get(`${team.path}/tracks/${team.track.id}/demand?end=fork`).expect(200);
    const expected = heightByEngine(engineFork(smaller.positiveVolumeMl));
    expect(Math.abs((await height()) / expected - 1)).toBeLessThan(RELATIVE_TOLERANCE);
    expect(Math.abs(expected / (fork?.hit.heightM ?? NaN) - 1)).toBeGreaterThan(0.01);
  });

  it('at the end of a stroke that is corrected to a shorter one still says at least, and keeps nobody from the demand', async () => {
    const { id } = (await log({ fork: { travelUsedMm: 170 } }).expect(201)).body as Run;
    const unit = `${team.path}/spring-units/${team.fork.id}`;
    const { version } = (await team.mechanic.get(unit).expect(200)).body as { version: number };
    const { body } = await team.mechanic.put(unit, { ...FORK, strokeMm: 168 }, version).expect(200);
    await team.mechanic.get(`${team.path}/tracks/${team.track.id}/demand?end=fork`).expect(200);
    const run = (await team.mechanic.get(`${team.path}/runs/${id}`).expect(200)).body as Run;
    expect(run.fork?.hit.kind).toBe('at-least');
    await team.mechanic.put(unit, FORK, (body as { version: number }).version).expect(200);
  });
});

describe('a bike, a unit, a rider or a track', () => {
  const post = (things: string, body: object) => team.mechanic.post(`${team.path}/${things}`, body);
  const bike = (change: object) => ({
    ...BIKE,
    name: 'Bike 2',
    riderId: team.rider.id,
    forkUnitId: team.fork.id,
    shockUnitId: team.shock.id,
    ...change,
  });

  it('is answered as it was entered, with its version', async () => {
    const { body } = await post('bikes', bike({ frontLoadSharePct: 42 })).expect(201);
    const { id } = body as Stored;
    expect(body).toMatchObject({ name: 'Bike 2', frontLoadSharePct: 42, headAngleDeg: 64, version: 1 });
    expect((await team.mechanic.get(`${team.path}/bikes/${id}`).expect(200)).body).toEqual(body);
  });

  it.each([
    ['a shock for a fork', { forkUnitId: 'shock' }, 'forkUnitId'],
    ['a fork for a shock', { shockUnitId: 'fork' }, 'shockUnitId'],
    [
      'a leverage table that ends before the stroke',
      { leverageTable: [{ shockTravelMm: 0, leverageRatio: 3 }] },
      'leverageTable',
    ],
    ['a head angle of 80°', { headAngleDeg: 80 }, 'headAngleDeg'],
    ['an unknown category', { category: 'road' }, 'category'],
  ])('is refused: %s', async (_, change, field) => {
    const units: Record<string, string> = { fork: team.fork.id, shock: team.shock.id };
    const wrong = Object.fromEntries(
      Object.entries(change).map(([name, value]) => [name, units[String(value)] ?? value]),
    );
    const { body } = await post('bikes', bike(wrong)).expect(422);
    expect((body as Problem).errors[0]?.field.startsWith(field)).toBe(true);
  });

  it.each([
    ['a unit with limits the wrong way round', { minPressurePsi: 120, maxPressurePsi: 40 }, 'maxPressurePsi'],
    ['a unit whose spacers fill its chamber', { spacerVolumeMl: 60 }, ''],
    ['a unit without a stroke', { strokeMm: undefined }, 'strokeMm'],
    ['a shaft wider than its bore', { shaftAreaMm2: 2_000 }, 'shaftAreaMm2'],
  ])('is refused: %s', async (_, change, field) => {
    const { body } = await post('spring-units', { ...FORK, name: 'Fork 2', ...change }).expect(422);
    if (field) expect((body as Problem).errors[0]?.field).toBe(field);
  });

  it('keeps its kind: a fork never becomes a shock', async () => {
    const path = `${team.path}/spring-units/${team.fork.id}`;
    const { body } = await team.mechanic.put(path, { ...SHOCK, name: 'Fork 1' }, 1).expect(422);
    expect((body as Problem).errors[0]?.field).toBe('kind');
  });

  it('is refused: a rider with a sag band the wrong way round', async () => {
    const wish = { sagLowPct: 20, sagHighPct: 15, reservePct: 6 };
    const { body } = await post('riders', { name: 'Rider B', readyMassKg: 70, fork: wish }).expect(422);
    expect((body as Problem).errors[0]?.field).toMatch(/^fork\.sag/);
  });

  it('is refused under a name that another bike has', async () => {
    await post('bikes', bike({ name: 'Bike 1' })).expect(409);
  });
});
