import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startService, type TestService } from './support/service.js';
import { foundTeam, SETUP, type TestTeam } from './support/team.js';

interface Baseline {
  readonly id: string;
  readonly venue: {
    readonly condition: string;
    readonly airTemperatureC: number;
    readonly isTemperatureAssumed: boolean;
    readonly stationPressureHpa: number;
    readonly isPressureAssumed: boolean;
  };
  readonly fork: { readonly forecast: { readonly p95M: number; readonly p05M: number } };
  readonly runCount: number;
}

let service: TestService;
let team: TestTeam;
const runIds: string[] = [];

const ride = async (condition: string, travelLeftMm: number): Promise<void> => {
  const day = { bikeId: team.bike.id, trackId: team.track.id, day: '2026-05-09', condition };
  const { body } = await team.mechanic
    .post(`${team.path}/runs`, { ...day, fork: { travelLeftMm } })
    .expect(201);
  runIds.push((body as { id: string }).id);
};
const read = async (asked = ''): Promise<Baseline> => {
  const path = `${team.path}/baselines?trackId=${team.track.id}${asked}`;
  return ((await team.mechanic.get(path).expect(200)).body as { items: Baseline[] }).items[0] as Baseline;
};

beforeAll(async () => {
  service = await startService();
  team = await foundTeam(service);
  await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: team.bike.id }).expect(201);
  for (const left of [20, 22, 25, 21, 24]) await ride('dry', left);
  for (const left of [48, 52, 50, 47, 51]) await ride('wet', left);
});
afterAll(() => service.stop());

describe('the ground', () => {
  it('on which softer hits were read is forecast to hit softer, by the baselines and by the demand alike', async () => {
    const [dry, wet] = [await read(), await read('&condition=wet')];
    expect(dry.venue.condition).toBe('dry');
    expect(wet.venue.condition).toBe('wet');
    expect(wet.fork.forecast.p95M).toBeLessThan(dry.fork.forecast.p95M);
    const path = `${team.path}/tracks/${team.track.id}/demand?condition=wet`;
    const demand = (await team.mechanic.get(path).expect(200)).body as {
      condition: string;
      riders: { forecast: { p95M: number } }[];
    };
    expect(demand.condition).toBe('wet');
    expect(demand.riders[0]?.forecast.p95M).toBeCloseTo(wet.fork.forecast.p95M, 9);
  });

  it('that nobody has ridden is forecast with a wider interval than the one ridden most', async () => {
    const [dry, muddy] = [await read(), await read('&condition=muddy')];
    const width = ({ fork: { forecast } }: Baseline) => Math.log(forecast.p95M / forecast.p05M);
    expect(width(muddy)).toBeGreaterThan(width(dry));
  });

  it('that does not exist is refused by name', async () => {
    const path = `${team.path}/baselines?trackId=${team.track.id}&condition=icy`;
    const { body } = await team.mechanic.get(path).expect(422);
    expect(body).toMatchObject({ errors: [{ field: 'condition' }] });
  });
});

describe('a baseline for a ground and an air', () => {
  it('is kept beside those for others: asked for again, each is the same one', async () => {
    const asked = ['', '&condition=wet', '&airTemperatureC=31', '&airTemperatureC=31&stationPressureHpa=880'];
    const first = [];
    for (const query of asked) first.push((await read(query)).id);
    expect(new Set(first).size).toBe(asked.length);
    for (const [i, query] of asked.entries()) expect((await read(query)).id).toBe(first[i]);
  });

  it("takes what was not read from the standard atmosphere at the track's altitude, and says so", async () => {
    const { venue } = await read();
    // US Standard Atmosphere 1976 at 1,450 m.
    expect(venue).toMatchObject({ isTemperatureAssumed: true, isPressureAssumed: true });
    expect(venue.airTemperatureC).toBeCloseTo(15 - 6.5 * 1.45, 1);
    expect(venue.stationPressureHpa).toBeCloseTo(850.8, 0);
    const read31 = (await read('&airTemperatureC=31')).venue;
    expect(read31).toMatchObject({ isTemperatureAssumed: false, isPressureAssumed: true });
    expect(read31.airTemperatureC).toBeCloseTo(31, 9);
  });

  it('names the runs behind it', async () => {
    const { id, runCount } = await read();
    const { body } = await team.coach.get(`${team.path}/baselines/${id}/runs`).expect(200);
    expect(body).toMatchObject({ runIds: runIds.toSorted() });
    expect(runCount).toBe(runIds.length);
  });

  it('is taken as it was offered for that ground', async () => {
    const { id } = await read('&condition=wet');
    const answer = await team.mechanic.post(`${team.path}/baselines/${id}/take`, {});
    expect(answer.status).toBe(201);
  });
});
