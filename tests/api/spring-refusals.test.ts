import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Member } from './support/member.js';
import { startService, type TestService } from './support/service.js';
import { FORK_END, SHOCK_END } from './support/spring-end.js';

let service: TestService;
let person: Member;

beforeAll(async () => {
  service = await startService();
  person = await new Member(service).signUp();
});
afterAll(() => service.stop());

interface Problem {
  code: string;
  errors: { field: string; given: unknown; allowed: string }[];
}

async function refusal(question: string, body: object): Promise<Problem> {
  const { status, body: problem } = await person.post(`/spring/${question}`, body);
  expect([status, problem]).toEqual([422, expect.anything()]);
  return problem as Problem;
}

const fill = { pressurePsi: 65, spacers: 1 };
const forkWith = (figures: object) => ({ ...FORK_END, unit: { ...FORK_END.unit, ...figures } });
const { leverageTable } = SHOCK_END;
const turnedBack = leverageTable.map((row, i) => (i === 4 ? { ...row, shockTravelMm: 1 } : row));

describe('the engine refuses at the field that was entered', () => {
  it.each([
    [
      'a volume that vanishes before full travel',
      forkWith({ positiveVolumeMl: 150 }),
      'end.unit.positiveVolumeMl',
    ],
    ['a shaft wider than the bore', forkWith({ shaftAreaMm2: 1_000 }), 'end.unit.shaftAreaMm2'],
    ['a lower leg that vanishes', forkWith({ lowerLegVolumeMl: 300 }), 'end.unit.lowerLegVolumeMl'],
    [
      'a transfer position outside the stroke',
      forkWith({ strokeMm: 40, transferPositionMm: 45 }),
      'end.unit.transferPositionMm',
    ],
    [
      'a bumper longer than the stroke',
      forkWith({ strokeMm: 30, bumperLengthMm: 40 }),
      'end.unit.bumperLengthMm',
    ],
    [
      'leverage that turns back',
      { ...SHOCK_END, leverageTable: turnedBack },
      'end.leverageTable.4.shockTravelMm',
    ],
    [
      'leverage that ends before the stroke',
      { ...SHOCK_END, leverageTable: leverageTable.slice(0, -2) },
      'end.leverageTable.8.shockTravelMm',
    ],
    [
      'a leverage table of one row',
      { ...SHOCK_END, leverageTable: leverageTable.slice(0, 1) },
      'end.leverageTable',
    ],
    ['a fork without a head angle', { ...FORK_END, headAngleDeg: undefined }, 'end.headAngleDeg'],
    ['a shock without leverage', { ...SHOCK_END, leverageTable: undefined }, 'end.leverageTable'],
  ])('%s', async (_, end, field) => {
    const { errors } = await refusal('sag', { end, fill });
    expect(errors).toEqual([{ field, given: expect.toSatisfy(() => true), allowed: expect.any(String) }]);
  });

  it('says what would be allowed in the unit of the field', async () => {
    const { errors, code } = await refusal('sag', { end: forkWith({ positiveVolumeMl: 150 }), fill });
    expect(code).toBe('spring.impossible');
    // Bore area times stroke: 907.92 mm² × 170 mm.
    expect(errors[0]).toMatchObject({ given: 150, allowed: '> 154.346 mL' });
  });

  it.each([
    ['sag', { fill: { ...fill, spacers: 9 } }, 'fill.spacers'],
    ['pressure-for-sag', { spacers: 9, sagPct: 20 }, 'spacers'],
    ['spacer-trade', { fill, spacers: 9, heightM: 0.5 }, 'spacers'],
    ['rebound-step', { before: fill, after: { ...fill, spacers: 9 } }, 'after.spacers'],
    ['grid', { spacers: [0, 9], pressuresPsi: [60] }, 'spacers'],
    ['grid', { spacers: [0], pressuresPsi: [60, 70, 65] }, 'pressuresPsi.2'],
    ['hit-height', { fill, travelUsedMm: 171 }, 'travelUsedMm'],
    [
      'drop-test',
      {
        landings: [
          { ...fill, dropHeightM: 0.5, travelUsedMm: 90 },
          { ...fill, spacers: 9, dropHeightM: 0.5, travelUsedMm: 90 },
        ],
      },
      'landings.1.spacers',
    ],
    [
      'drop-test',
      { landings: [{ ...fill, dropHeightM: 0.5, travelUsedMm: 190 }] },
      'landings.0.travelUsedMm',
    ],
    ['drop-test', { landings: [] }, 'landings'],
    [
      'braking',
      { fill, slopeDeg: 5, decelerationMPerS2: 2, bike: brakingBike({ centreOfMassToRearMm: 1_260 }) },
      'bike.centreOfMassToRearMm',
    ],
    [
      'braking',
      { fill, slopeDeg: 5, decelerationMPerS2: 2, bike: brakingBike({}), end: SHOCK_END },
      'end.unit.kind',
    ],
  ])('of %s: %o', async (question, body, field) => {
    const { errors } = await refusal(question, { end: FORK_END, ...body });
    expect(errors.map((error) => error.field)).toEqual([field]);
  });

  it('reading by reading in the workshop', async () => {
    const question = { boreAreaMm2: 908, hoseVolumeMl: 4 };
    const readings = [
      { travelMm: 0, pressurePsi: 50 },
      { travelMm: 120, pressurePsi: 110 },
    ];
    const spaced = await refusal('identify-volume', { ...question, runs: [{ spacers: 1, readings }] });
    expect(spaced.errors[0]?.field).toBe('spacerVolumeMl');
    const empty = await refusal('identify-volume', { ...question, runs: [{ spacers: 0, readings: [] }] });
    expect(empty.errors[0]?.field).toBe('runs.0.readings');
    const none = await refusal('identify-volume', { ...question, runs: [] });
    expect(none.errors[0]?.field).toBe('runs');
  });
});

function brakingBike(figures: object): object {
  return {
    totalMassKg: 99.5,
    wheelbaseMm: 1_250,
    centreOfMassHeightMm: 1_050,
    centreOfMassToRearMm: 520,
    frontUnsprungMassKg: 4.3,
    ...figures,
  };
}

describe('what no one can mean never reaches the engine', () => {
  it.each([
    ['no mass', { end: { ...FORK_END, sprungMassKg: 0 } }, 'end.sprungMassKg'],
    ['a word for a number', { end: { ...FORK_END, sprungMassKg: 'NaN' } }, 'end.sprungMassKg'],
    ['a number too large for any pump', { fill: { ...fill, pressurePsi: 1e6 } }, 'fill.pressurePsi'],
    ['an empty spring', { fill: { ...fill, pressurePsi: 0 } }, 'fill.pressurePsi'],
    ['half a spacer', { fill: { ...fill, spacers: 0.5 } }, 'fill.spacers'],
    [
      'air that no one breathes',
      { end: { ...FORK_END, air: { stationPressureHpa: 10 } } },
      'end.air.stationPressureHpa',
    ],
    ['an unknown field', { fill: { ...fill, pressureBar: 5 } }, 'fill.pressureBar'],
    ['no unit', { end: { ...FORK_END, unit: null } }, 'end.unit'],
  ])('%s', async (_, body, field) => {
    const { errors } = await refusal('sag', { end: FORK_END, fill, ...body });
    expect(errors.map((error) => error.field)).toContain(field);
  });

  it('a number beyond every number', async () => {
    const text = JSON.stringify({ end: FORK_END, fill }).replace('65', '1e999');
    const { status } = await person
      .send('post', '/spring/sag')
      .set('content-type', 'application/json')
      .send(text);
    expect(status).toBe(422);
  });

  it('a grid larger than is good for anybody', async () => {
    const pressuresPsi = Array.from({ length: 101 }, (_, i) => 40 + i);
    const { errors } = await refusal('grid', { end: FORK_END, spacers: [0], pressuresPsi });
    expect(errors[0]?.field).toBe('pressuresPsi');
  });

  it('any figure whatever: an answer without NaN, or a named field', async () => {
    const figures = Object.entries(FORK_END.unit).filter(([, value]) => typeof value === 'number');
    const wild = fc.oneof(fc.double(), fc.double({ min: 0, max: 1_000 }), fc.integer({ min: -5, max: 5 }));
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...figures.map(([name]) => name)),
        wild,
        wild,
        async (name, value, height) => {
          const end = forkWith({ [name]: value });
          const { status, body } = await person.post('/spring/landing', { end, fill, heightM: height });
          expect([200, 422]).toContain(status);
          if (status === 422) expect((body as Problem).errors.length).toBeGreaterThan(0);
          // JSON knows no NaN and no infinity: they would have become null.
          else expect(JSON.stringify({ ...body, uncertainty: 0 })).not.toContain('null');
        },
      ),
      { numRuns: 150 },
    );
  });
});

describe('a question', () => {
  it('is answered to nobody who is not signed in', async () => {
    await new Member(service).post('/spring/sag', { end: FORK_END, fill }).expect(401);
  });

  it('can be asked as often as one likes and is answered the same', async () => {
    const first = await person.post('/spring/landing', { end: FORK_END, fill, heightM: 0.5 });
    const second = await person.post('/spring/landing', { end: FORK_END, fill, heightM: 0.5 });
    expect(second.body).toEqual(first.body);
  });
});
