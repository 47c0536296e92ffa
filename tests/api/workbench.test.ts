import { ENGINE_VERSION, sag, standardAtmosphere, travelForHeight } from '@loamledger/spring';
import { PASCAL_PER_PSI } from '@loamledger/units';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Member } from './support/member.js';
import { startService, type TestService } from './support/service.js';
import { near, scene, springOf } from './support/spring-end.js';
import { foundTeam, FORK, SETUP, type Stored, type TestTeam } from './support/team.js';

interface End {
  unit: Record<string, number | string>;
  fill: { pressurePsi: number; spacers: number } | null;
  sprungMassKg: number;
  ambientPressureHpa: number;
  airTemperatureC: number;
  leverageTable: object[];
  forecast: { p05M: number; medianM: number; p95M: number } | null;
  riskCurve: { heightM: number; riskPct: number }[];
  uncertainty: Record<string, number>;
  assumed: { field: string }[];
}
interface Ends {
  setupId: string | null;
  trackId: string | null;
  fork: End;
  shock: End;
  version: string;
  braking: { assumed: string[]; centreOfMassToRearMm: number; totalMassKg: number };
}
interface Expected {
  sagPct: number;
  medianTravelMm: number | null;
  travel95Mm: number | null;
  riskPct: number | null;
}
interface Decision {
  id: string;
  toSetupId: string;
  reason: string;
  trackId: string | null;
  expected: { fork: Expected; shock: Expected };
}

let service: TestService;
let team: TestTeam;
let other: TestTeam;
let first: Stored;

beforeAll(async () => {
  service = await startService();
  team = await foundTeam(service);
  other = await foundTeam(service, 'Team 2');
  const body = { ...SETUP, bikeId: team.bike.id };
  first = (await team.mechanic.post(`${team.path}/setups`, body).expect(201)).body as Stored;
  for (const travelLeftMm of [30, 22, 26, 35]) {
    const run = { bikeId: team.bike.id, trackId: team.track.id, day: '2026-05-09' };
    await team.mechanic
      .post(`${team.path}/runs`, {
        ...run,
        fork: { travelLeftMm },
        shock: { travelLeftMm: travelLeftMm / 4 },
      })
      .expect(201);
  }
});
afterAll(() => service.stop());

const endsPath = (trackId?: string) =>
  `${team.path}/bikes/${team.bike.id}/ends${trackId ? `?trackId=${trackId}` : ''}`;
const readEnds = async (member: Member, trackId?: string) =>
  (await member.get(endsPath(trackId)).expect(200)).body as Ends;

describe('the ends of a bike', () => {
  it('carry everything that was entered, on the track, in its air', async () => {
    const ends = await readEnds(team.mechanic, team.track.id);
    const air = standardAtmosphere(1_450);
    expect(ends).toMatchObject({
      bikeId: team.bike.id,
      riderId: team.rider.id,
      setupId: first.id,
      trackId: team.track.id,
      engineVersion: ENGINE_VERSION,
    });
    expect(ends.fork).toMatchObject({
      unitName: 'Fork 1',
      fill: { pressurePsi: near(65), spacers: 1 },
      ambientPressureHpa: near(air.pressure / 100),
      airTemperatureC: near(air.temperature - 273.15),
      limits: { minPressurePsi: near(40), maxPressurePsi: near(120), maxSpacers: FORK.maxSpacers },
      spacersInStock: 6,
      // Share 0.40 of rider and bike, less the unsprung mass.
      sprungMassKg: near(0.4 * (84 + 15.5) - 4.3),
      headAngleDeg: near(64),
      leverageTable: [],
      sources: { strokeMm: 'measured', boreAreaMm2: 'assumed' },
      wishes: { sagLowPct: near(15), sagHighPct: near(20), reservePct: near(6), acceptedRiskPct: near(5) },
    });
    for (const figure of ['strokeMm', 'positiveVolumeMl', 'negativeVolumeMl', 'lowerLegVolumeMl'] as const)
      expect(ends.fork.unit[figure]).toEqual(near(FORK[figure]));
    expect(ends.fork.unit).toMatchObject({ kind: 'fork', thermalTimePositiveS: 1.5 });
    expect(ends.shock.leverageTable).toHaveLength(11);
    expect(ends.shock).toMatchObject({ headAngleDeg: null, unit: { kind: 'shock', lowerLegAreaMm2: 0 } });
    expect(ends.fork.assumed.map(({ field }) => field)).toContain('frontLoadSharePct');
    expect(ends.braking).toMatchObject({
      totalMassKg: 99.5,
      centreOfMassToRearMm: near(0.4 * 1_250),
      assumed: expect.arrayContaining(['centreOfMassHeightMm', 'centreOfMassToRearMm']) as unknown,
    });
  });

  it('carry a risk that falls over rising heights and agrees with the forecast', async () => {
    const { fork } = await readEnds(team.mechanic, team.track.id);
    expect(fork.riskCurve).toHaveLength(200);
    expect(fork.riskCurve[0]?.riskPct).toBeCloseTo(99.9, 3);
    expect(fork.riskCurve.at(-1)?.riskPct).toBeCloseTo(0.01, 4);
    for (const [i, point] of fork.riskCurve.slice(1).entries()) {
      const before = fork.riskCurve[i];
      if (!before) throw new Error();
      expect(point.heightM).toBeGreaterThan(before.heightM);
      expect(point.riskPct).toBeLessThan(before.riskPct);
    }
    const above = fork.riskCurve.find(({ heightM }) => heightM > (fork.forecast?.p95M ?? NaN));
    expect(above?.riskPct).toBeLessThan(5);
    expect(above?.riskPct).toBeGreaterThan(4);
  });

  it('have the air of sea level and no demand without a track', async () => {
    const ends = await readEnds(team.coach);
    expect(ends.fork).toMatchObject({
      ambientPressureHpa: 1_013.25,
      forecast: null,
      riskCurve: [],
      evidence: null,
    });
    expect(ends.trackId).toBeNull();
  });

  it('are known by their version: the same until something behind them changes', async () => {
    const { version } = await readEnds(team.mechanic, team.track.id);
    const { headers } = await team.mechanic.get(endsPath(team.track.id)).expect(200);
    const tag = String(headers['etag']);
    expect(tag).toContain(version);
    await team.mechanic.get(endsPath(team.track.id)).set('if-none-match', tag).expect(304);
    expect((await readEnds(team.mechanic)).version).not.toBe(version);
  });

  it("are seen by a rider on their own bike, and by nobody on another team's", async () => {
    await team.riderMember.get(endsPath()).expect(200);
    const foreign = `${other.path}/bikes/${team.bike.id}/ends`;
    await other.mechanic.get(foreign).expect(404);
    await team.mechanic.get(`${team.path}/bikes/${other.bike.id}/ends`).expect(404);
    await team.mechanic.get(endsPath(other.track.id)).expect(404);
    await team.mechanic.get(endsPath('nonsense')).expect(422);
  });

  it('have nothing in them before the first set-up', async () => {
    const path = `${other.path}/bikes/${other.bike.id}/ends`;
    const { body } = await other.mechanic.get(path).expect(200);
    expect(body).toMatchObject({ setupId: null, fork: { fill: null }, shock: { fill: null } });
  });

  it('take a pressure that was pumped elsewhere to the track', async () => {
    const setup = { ...SETUP, bikeId: other.bike.id, filledAltitudeM: 0, filledTemperatureC: 15 };
    await other.mechanic.post(`${other.path}/setups`, setup).expect(201);
    const path = `${other.path}/bikes/${other.bike.id}/ends?trackId=${other.track.id}`;
    const { fork } = (await other.mechanic.get(path).expect(200)).body as Ends;
    const sea = standardAtmosphere(0);
    const track = standardAtmosphere(1_450);
    const absolute = (65 * PASCAL_PER_PSI + sea.pressure) * (track.temperature / sea.temperature);
    expect(fork.fill?.pressurePsi).toEqual(near((absolute - track.pressure) / PASCAL_PER_PSI));
  });
});

describe('a question about a stored bike', () => {
  const fill = { pressurePsi: 65, spacers: 1 };
  const path = (question: string, end = 'fork') =>
    `${team.path}/bikes/${team.bike.id}/ends/${end}/spring/${question}?trackId=${team.track.id}`;
  const asks: [string, object][] = [
    ['curves', { fill }],
    ['sag', { fill }],
    ['pressure-for-sag', { spacers: 2, sagPct: 20 }],
    ['landing', { fill, heightM: 0.4 }],
    ['hit-height', { fill, travelUsedMm: 120 }],
    ['fullest-hit', { fill }],
    ['spacer-trade', { fill, spacers: 2, heightM: 0.4 }],
    ['venue-pressure', { fill, venue: { altitudeM: 300, airTemperatureC: 20 }, lowerLegs: 'bled' }],
    ['rebound-step', { before: fill, after: { pressurePsi: 75, spacers: 1 } }],
    ['grid', { spacers: [0, 1], pressuresPsi: [60, 65] }],
    [
      'drop-test',
      { landings: [100, 102].map((travelUsedMm) => ({ ...fill, dropHeightM: 0.6, travelUsedMm })) },
    ],
  ];

  it.each(asks)('is answered as if the bike were told along with it: %s', async (question, ask) => {
    const { fork } = await readEnds(team.mechanic, team.track.id);
    const end = {
      unit: fork.unit,
      sprungMassKg: fork.sprungMassKg,
      headAngleDeg: 64,
      air: { stationPressureHpa: fork.ambientPressureHpa, airTemperatureC: fork.airTemperatureC },
      uncertainty: fork.uncertainty,
    };
    const stored = (await team.mechanic.post(path(question), ask).expect(200)).body as Record<
      string,
      unknown
    >;
    const told = (await team.mechanic.post(`/spring/${question}`, { ...ask, end }).expect(200))
      .body as object;
    // What is assumed is named after the bike's fields, and the last digits went through the message.
    expect(withoutAssumed(stored)).toEqual(nearAll(withoutAssumed(told)));
    expect(stored['assumed']).toContain('frontLoadSharePct');
  });

  it('takes braking from bike and rider', async () => {
    const { braking, fork } = await readEnds(team.mechanic, team.track.id);
    const { assumed, ...bike } = braking;
    const ask = { fill, slopeDeg: 10, decelerationMPerS2: 2 };
    const end = {
      unit: fork.unit,
      sprungMassKg: fork.sprungMassKg,
      headAngleDeg: 64,
      air: { stationPressureHpa: fork.ambientPressureHpa, airTemperatureC: fork.airTemperatureC },
      uncertainty: fork.uncertainty,
    };
    const stored = (await team.mechanic.post(path('braking'), ask).expect(200)).body as Record<
      string,
      unknown
    >;
    const told = (await team.mechanic.post('/spring/braking', { ...ask, end, bike }).expect(200))
      .body as object;
    expect(withoutAssumed(stored)).toEqual(nearAll(withoutAssumed(told)));
    expect(stored['assumed']).toEqual(expect.arrayContaining([...assumed, 'frontBrakeSharePct']));
    const rear = await team.mechanic.post(path('braking', 'shock'), ask).expect(422);
    expect((rear.body as { code: string }).code).toBe('spring.no-fork');
  });

  it('takes bore and spacers of the workshop questions from the unit', async () => {
    const readings = [
      { travelMm: 0, pressurePsi: 50 },
      { travelMm: 120, pressurePsi: 122 },
    ];
    const runs = Array.from({ length: 5 }, () => ({ spacers: 0, readings }));
    const stored = (await team.mechanic.post(path('identify-volume'), { runs, hoseVolumeMl: 4 }).expect(200))
      .body;
    const air = { stationPressureHpa: standardAtmosphere(1_450).pressure / 100 };
    const told = (
      await team.mechanic.post('/spring/identify-volume', {
        runs,
        hoseVolumeMl: 4,
        boreAreaMm2: FORK.boreAreaMm2,
        spacerVolumeMl: FORK.spacerVolumeMl,
        air,
      })
    ).body as object;
    expect(withoutAssumed(stored as object)).toEqual(nearAll(withoutAssumed(told)));
    const repeats = [{ beforePsi: 70, afterPsi: 60 }];
    await team.mechanic
      .post(path('identify-negative-volume'), { repeats, spacers: 0, hoseVolumeMl: 4 })
      .expect(200);
  });

  it('is not answered about an end that is none, a bike of another team, or a field the engine refuses', async () => {
    await team.mechanic.post(path('sag', 'saddle'), { fill }).expect(422);
    await team.riderMember.post(path('sag'), { fill }).expect(200);
    const foreign = `${team.path}/bikes/${other.bike.id}/ends/fork/spring/sag`;
    await team.mechanic.post(foreign, { fill }).expect(404);
    const { body } = await team.mechanic.post(path('sag'), { fill: { ...fill, spacers: 9 } }).expect(422);
    expect(body).toMatchObject({ errors: [{ field: 'fill.spacers' }] });
  });
});

describe('a change', () => {
  const change = (setupId: string | null, trackId: string | null) => ({
    bikeId: team.bike.id,
    setupId,
    trackId,
    fork: { pressurePsi: 70, spacers: 2, reboundClicks: 7 },
    shock: { pressurePsi: 190, spacers: 1 },
    reason: 'Stay higher.',
  });
  const decisions = async () => {
    const { body } = await team.mechanic.get(`${team.path}/decisions?bikeId=${team.bike.id}`).expect(200);
    return (body as { items: Decision[] }).items;
  };
  const currentSetup = async () => (await readEnds(team.mechanic)).setupId;

  it('makes the next set-up, with what the engine expects of it frozen in the decision', async () => {
    const ends = await readEnds(team.mechanic, team.track.id);
    const path = `${team.path}/changes`;
    const setup = (await team.mechanic.post(path, change(first.id, team.track.id)).expect(201))
      .body as Stored;
    expect(setup).toMatchObject({
      revision: 2,
      previousId: first.id,
      fork: { pressurePsi: near(70), spacers: 2 },
    });
    const [decision] = await decisions();
    expect(decision).toMatchObject({ toSetupId: setup.id, reason: 'Stay higher.', trackId: team.track.id });
    for (const [end, psi, spacers] of [
      ['fork', 70, 2],
      ['shock', 190, 1],
    ] as const) {
      const expected = decision?.expected[end];
      const { forecast, riskCurve, ambientPressureHpa, airTemperatureC, sprungMassKg } = ends[end];
      const told = scene(end, psi, spacers);
      const here = {
        unit: told.unit,
        fill: {
          ...told.fill,
          ambientPressure: (ambientPressureHpa * 100) as typeof told.fill.ambientPressure,
          temperature: (airTemperatureC + 273.15) as typeof told.fill.temperature,
        },
        end: { ...told.end, sprungMass: sprungMassKg },
      };
      const spring = springOf(here);
      expect(expected?.sagPct).toEqual(near(100 * sag(spring, here.end).fraction));
      const travel = (height = NaN) => 1e3 * travelForHeight(spring, here.end, height).travel;
      // Forecasts reach the test with 12 digits.
      expect(expected?.medianTravelMm).toBeCloseTo(travel(forecast?.medianM), 6);
      expect(expected?.travel95Mm).toBeCloseTo(travel(forecast?.p95M), 6);
      const fullest = (
        await team.mechanic.post(
          `${team.path}/bikes/${team.bike.id}/ends/${end}/spring/fullest-hit?trackId=${team.track.id}`,
          { fill: { pressurePsi: psi, spacers } },
        )
      ).body as { heightM: number };
      const next = riskCurve.findIndex(({ heightM }) => heightM > fullest.heightM);
      const risk = expected?.riskPct ?? NaN;
      expect(risk).toBeLessThanOrEqual(riskCurve[next - 1]?.riskPct ?? 100);
      expect(risk).toBeGreaterThanOrEqual(riskCurve[next]?.riskPct ?? 0);
    }
  });

  it('stays as it was expected when the bike changes later', async () => {
    const before = await decisions();
    const rider = { name: 'Rider A', readyMassKg: 95 };
    await team.mechanic.put(`${team.path}/riders/${team.rider.id}`, rider, team.rider.version).expect(200);
    expect(await decisions()).toEqual(before);
  });

  it('that started from another set-up is refused, and nothing is stored', async () => {
    const before = await decisions();
    for (const stale of [first.id, null]) {
      const { body } = await team.mechanic.post(`${team.path}/changes`, change(stale, null)).expect(409);
      expect((body as { code: string }).code).toBe('change.stale');
    }
    expect(await decisions()).toEqual(before);
  });

  it('that is sent twice is made once, and two at once make one', async () => {
    const setupId = await currentSetup();
    const body = { ...change(setupId, null), note: 'Twice.' };
    const send = () => team.mechanic.post(`${team.path}/changes`, body).set('idempotency-key', 'change-1');
    const [one, two] = await Promise.all([send(), send()]);
    expect([one.status, two.status]).toEqual([201, 201]);
    expect(two.body).toEqual(one.body);
    const rivals = await Promise.all(
      [1, 2, 3].map(() => team.mechanic.post(`${team.path}/changes`, change((one.body as Stored).id, null))),
    );
    expect(rivals.map(({ status }) => status).sort()).toEqual([201, 409, 409]);
  });

  it('without a track expects the sag only', async () => {
    const [decision] = await decisions();
    expect(decision?.expected.fork).toEqual({
      sagPct: expect.any(Number) as number,
      medianTravelMm: null,
      travel95Mm: null,
      riskPct: null,
      hit: null,
    });
  });

  it.each([
    ['more pressure than the limit', { fork: { pressurePsi: 130, spacers: 2 } }, 'fork.pressurePsi'],
    ['less pressure than the limit', { shock: { pressurePsi: 90, spacers: 1 } }, 'shock.pressurePsi'],
    ['more spacers than the limit', { fork: { pressurePsi: 70, spacers: 6 } }, 'fork.spacers'],
    ['no shock for a bike that has one', { shock: null }, 'shock'],
    ['no reason', { reason: '' }, 'reason'],
  ])('with %s is refused at its field', async (_, parts, field) => {
    const body = { ...change(await currentSetup(), null), ...parts };
    const { status, body: problem } = await team.mechanic.post(`${team.path}/changes`, body);
    expect([status, problem]).toEqual([
      422,
      expect.objectContaining({ errors: [expect.objectContaining({ field })] }),
    ]);
  });

  it('is made by a mechanic, or by a rider on their own bike, and by nobody else', async () => {
    const setupId = await currentSetup();
    await team.coach.post(`${team.path}/changes`, change(setupId, null)).expect(403);
    await other.riderMember.post(`${team.path}/changes`, change(setupId, null)).expect(404);
    await team.riderMember
      .post(`${team.path}/changes`, { ...change(setupId, null), bikeId: other.bike.id })
      .expect(404);
    await team.riderMember.post(`${team.path}/changes`, change(setupId, other.track.id)).expect(404);
    await team.riderMember.post(`${team.path}/changes`, change(setupId, team.track.id)).expect(201);
  });
});

function withoutAssumed(answer: object): object {
  return JSON.parse(JSON.stringify(answer), (key, value: unknown) =>
    key === 'assumed' || key === 'contributions' ? undefined : value,
  ) as object;
}

/** Numbers there and back through a message differ in their last digits; solvers make a little more of that. */
function nearAll(value: unknown): unknown {
  if (typeof value === 'number') return expect.closeTo(value, 5);
  if (Array.isArray(value)) return value.map(nearAll);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, nearAll(inner)]));
}
