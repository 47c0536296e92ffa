import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { startService, type TestService } from './support/service.js';
import { foundTeam, SETUP, type Stored, type TestTeam } from './support/team.js';
import { without } from './support/without.js';

let service: TestService;
let team: TestTeam;

beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.stop());

interface Problem {
  line: number;
  column: string;
  given: unknown;
  allowed: string;
}
interface Run extends Stored {
  setupId: string;
  sessionId: string;
  day: string;
  condition: string;
  timeS: number | null;
  fork: { travelUsedMm: number; hit: { heightM: number } } | null;
  voided: { reason: string; readingsCount: boolean } | null;
}

const HEADER =
  'date,track,bike,time_s,fork_pressure_psi,fork_spacers,shock_pressure_psi,shock_spacers,fork_travel_left_mm,shock_travel_used_mm';
const GOOD = '2026-05-09,Quarry Stairs,Bike 1,3:07.4,65,1,180,1,18,58';
const csv = (...lines: string[]) => [HEADER, ...lines].join('\n');
/** As many good lines as wanted, over some days and set-ups. */
const notebook = (lines: number) =>
  Array.from({ length: lines }, (_, index) => {
    const day = String(1 + (index % 20)).padStart(2, '0');
    return `2026-05-${day},Quarry Stairs,Bike 1,${180 + (index % 9)},${60 + (index % 5)},1,180,2,${20 + (index % 30)},${40 + (index % 10)}`;
  });

const commit = (file: string) => team.mechanic.postCsv(`${team.path}/runs/import`, file);
const preview = async (file: string) =>
  (await team.mechanic.postCsv(`${team.path}/runs/import/preview`, file).expect(200)).body as {
    runs: number;
    rows: object[];
    problemCount: number;
    problems: Problem[];
  };
const items = async <Item>(things: string): Promise<Item[]> =>
  ((await team.mechanic.get(`${team.path}/${things}?limit=500`).expect(200)).body as { items: Item[] }).items;
const runs = () => items<Run>('runs');
const setups = () => items<Stored & { fork: object; shock: object }>('setups');

describe('an import of runs', () => {
  beforeEach(async () => {
    team = await foundTeam(service);
  });

  it('stores 500 lines with their sessions and set-ups, and their hit heights', async () => {
    const { body } = await commit(csv(...notebook(500))).expect(201);
    expect(body).toEqual({ runs: 500, voidedRuns: 0, newSessions: 20, newSetups: 5 });
    const stored = await runs();
    expect(stored).toHaveLength(500);
    expect(stored.every(({ fork }) => (fork?.hit.heightM ?? 0) > 0)).toBe(true);
    const decisions = await items<{ reason: string }>('decisions');
    expect(decisions.at(-1)?.reason).toBe('From the notebook, 2026-05-01.');
  });

  it('stores nothing of 500 lines when one is bad, and names the line and the column', async () => {
    const lines = notebook(500);
    lines[250] = lines[250]?.replace(',1,180,', ',1,999,') ?? '';
    const { body } = await commit(csv(...lines)).expect(422);
    expect((body as { errors: unknown }).errors).toEqual([
      { field: 'line 252: shock_pressure_psi', given: 999, allowed: 'a number from 5 to 600 psi' },
    ]);
    for (const things of ['runs', 'sessions', 'setups', 'decisions']) expect(await items(things)).toEqual([]);
  });

  it('stores nothing twice under one Idempotency-Key, and takes the key for no other file', async () => {
    const send = (file: string) => commit(file).set('idempotency-key', 'notebook-1');
    const first = await send(csv(GOOD)).expect(201);
    const second = await send(csv(GOOD)).expect(201);
    expect(second.body).toEqual(first.body);
    expect(await runs()).toHaveLength(1);
    await send(csv(GOOD, GOOD)).expect(409);
  });

  it('gives the same runs when a team exports them and another imports them', async () => {
    await commit(csv(...notebook(30))).expect(201);
    const filled = { ...SETUP, filledAltitudeM: 420, filledTemperatureC: 21, reason: 'Pumped at home.' };
    await team.mechanic.post(`${team.path}/setups`, { ...filled, bikeId: team.bike.id }).expect(201);
    await team.mechanic
      .post(`${team.path}/runs`, {
        bikeId: team.bike.id,
        trackId: team.track.id,
        day: '2026-05-21',
        condition: 'wet',
        airTemperatureC: 7.3,
        startedAt: '2026-05-21T10:31:12Z',
        fork: { travelUsedMm: 170, readingSdMm: 1.5, bottomOuts: 2 },
        ratings: { support: 2, fatigue: 4 },
        spoilt: { reason: '=slid, "badly"\nthen walked', readingsCount: true },
        note: "'-quoted; note",
      })
      .expect(201);
    const original = await runs();
    const { text } = await team.coach.get(`${team.path}/runs/export`).expect(200);

    team = await foundTeam(service, 'Team 2');
    expect(await preview(text)).toMatchObject({ problems: [], runs: 31 });
    await commit(text).expect(201);
    const copy = await runs();
    expect(copy.map(comparable)).toEqual(original.map(comparable));
    expect((await team.mechanic.get(`${team.path}/runs/export`)).text).toBe(text);
  });

  it('lets a preview say what would be stored, and stores nothing', async () => {
    const spoilt = `${HEADER},spoilt,readings_count\n${GOOD},,\n${GOOD},Slid out,yes`;
    expect(await preview(spoilt)).toMatchObject({
      runs: 2,
      voidedRuns: 1,
      newSessions: 1,
      newSetups: 1,
      problems: [],
      rows: [
        { line: 2, track: 'Quarry Stairs', bike: 'Bike 1', rider: 'Rider A', setupRevision: 1, timeS: 187.4 },
        { line: 3, voided: true },
      ],
    });
    expect(await runs()).toEqual([]);
    expect(await setups()).toEqual([]);
    await commit(spoilt).expect(201);
    expect((await runs()).map(({ voided }) => voided?.readingsCount)).toEqual([true, undefined]);
  });

  it('finds the set-up of a line without set-up cells in the line before, else in the bike', async () => {
    await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: team.bike.id }).expect(201);
    const blank = '2026-05-09,quarry stairs,BIKE 1,,,,,,18,';
    const changed = '2026-05-09,Quarry Stairs,Bike 1,,70,2,180,1,18,';
    await commit(csv(blank, changed, blank)).expect(201);
    const [revised, first] = await setups();
    expect((await runs()).map(({ setupId }) => setupId)).toEqual([revised?.id, revised?.id, first?.id]);
  });

  it('rides an earlier revision with the same figures again instead of making another', async () => {
    const other = '2026-05-09,Quarry Stairs,Bike 1,,70,2,180,1,18,';
    await commit(csv(GOOD, other, GOOD)).expect(201);
    expect(await setups()).toHaveLength(2);
  });

  it('leaves an end without cells as it was', async () => {
    await commit(csv(GOOD, '2026-05-09,Quarry Stairs,Bike 1,,70,2,,,18,')).expect(201);
    const [second] = await setups();
    expect(second).toMatchObject({
      fork: { pressurePsi: 70, spacers: 2 },
      shock: { pressurePsi: 180, spacers: 1 },
    });
  });

  it('makes two sessions of a cold morning and a warm afternoon, and fills a blank from the run before', async () => {
    const header = 'date,track,bike,fork_pressure_psi,fork_spacers,shock_pressure_psi,shock_spacers';
    const at = (temperature: string) => `2026-05-09,Quarry Stairs,Bike 1,65,1,180,1,${temperature}`;
    await commit([`${header},air_temperature_c`, at('4'), at(''), at('19.5'), at('')].join('\n')).expect(201);
    const [warm, cold] = await items<Stored>('sessions');
    expect([cold, warm]).toMatchObject([{ airTemperatureC: 4 }, { airTemperatureC: 19.5 }]);
    expect((await runs()).map(({ sessionId }) => sessionId).toReversed()).toEqual(
      [cold, cold, warm, warm].map((session) => session?.id),
    );
  });

  it('is for mechanics and coaches', async () => {
    await team.coach.postCsv(`${team.path}/runs/import`, csv(GOOD)).expect(201);
    await team.riderMember.postCsv(`${team.path}/runs/import`, csv(GOOD)).expect(403);
  });

  it('refuses what is no CSV text', async () => {
    await team.mechanic.post(`${team.path}/runs/import`, { date: '2026-05-09' }).expect(400);
    await team.mechanic.post(`${team.path}/runs/import`).expect(400);
    const garbled = team.mechanic
      .postCsv(`${team.path}/runs/import`, '')
      .send(Buffer.from([0xff, 0xfe, 0x41]) as never);
    await garbled.expect(400);
    await commit(`${csv(GOOD)}${' '.repeat(4.1 * 1024 * 1024)}`).expect(413);
  });
});

describe('each problem of a line', () => {
  // A preview stores nothing: one team serves all of them.
  beforeAll(async () => {
    team = await foundTeam(service);
  });

  const base: Record<string, string> = {
    date: '2026-05-09',
    track: 'Quarry Stairs',
    bike: 'Bike 1',
    fork_pressure_psi: '65',
    fork_spacers: '1',
    shock_pressure_psi: '180',
    shock_spacers: '1',
  };

  it.each([
    ['date', '2026-02-30', 'a day'],
    ['date', '9.5.2026', 'a day'],
    ['date', '', 'a day'],
    ['track', 'Nowhere', 'Quarry Stairs'],
    ['bike', 'Bike 9', 'Bike 1'],
    ['rider', 'Rider Z', 'Rider A'],
    ['condition', 'icy', 'dry, damp'],
    ['air_temperature_c', '99', 'from -40 to 55'],
    ['start_time', '25:00', 'moment'],
    ['time_s', '0', 'from 1 to 7200'],
    ['time_s', '1e999', 'from 1 to 7200'],
    ['fork_pressure_psi', '130', 'at most 120 psi'],
    ['fork_pressure_psi', '', 'from 5 to 600'],
    ['fork_spacers', '1.5', 'whole number'],
    ['shock_spacers', '9', 'the limit entered'],
    ['fork_rebound_clicks', '61', 'from 0 to 60'],
    ['filled_altitude_m', '420', 'together'],
    ['fork_travel_left_mm', '171', 'stroke of this fork, 170 mm'],
    ['shock_travel_used_mm', '66', 'stroke of this shock, 65 mm'],
    ['fork_reading_sd_mm', '0', 'from 0.1 to 20'],
    ['fork_bottom_outs', '-1', 'from 0 to 100'],
    ['support', '6', 'from 1 to 5'],
    ['spoilt', 'a\u0007bell', 'control characters'],
    ['readings_count', 'no', 'spoilt'],
    ['note', 'x'.repeat(2_001), '2000'],
  ])('names its column %s, what was given (%s) and what would be allowed', async (column, given, allowed) => {
    const cells = { ...base, [column]: given };
    const file = `${Object.keys(cells).join(',')}\n${Object.values(cells).join(',')}\n`;
    const { problems } = await preview(file);
    expect(problems).toHaveLength(1);
    const wanted = column === 'filled_altitude_m' ? 'filled_temperature_c' : column;
    expect(problems[0]).toMatchObject({
      line: 2,
      column: wanted,
      allowed: expect.stringContaining(allowed) as string,
    });
  });

  it('is told for every line, not only the first', async () => {
    const { problems, problemCount } = await preview(
      csv(
        '2026-05-09,Nowhere,Bike 9,x,65,1,180,1,18,58',
        GOOD,
        '2026-05-09,Quarry Stairs,Bike 1,,,,,,200,58',
      ),
    );
    expect(problems.map(({ line, column }) => [line, column])).toEqual([
      [2, 'time_s'],
      [2, 'track'],
      [2, 'bike'],
      [4, 'fork_travel_left_mm'],
    ]);
    expect(problemCount).toBe(4);
  });

  it('is not repeated for runs that only follow a refused set-up', async () => {
    const follows = '2026-05-09,Quarry Stairs,Bike 1,,,,,,18,58';
    const { problems } = await preview(
      csv('2026-05-09,Quarry Stairs,Bike 1,,65,25,180,1,18,58', follows, follows),
    );
    expect(problems.map(({ line, column }) => [line, column])).toEqual([[2, 'fork_spacers']]);
  });

  it('is named where a bike has no set-up at all', async () => {
    const { problems } = await preview(csv('2026-05-09,Quarry Stairs,Bike 1,,,,,,18,58'));
    expect(problems).toMatchObject([{ line: 2, column: 'fork_pressure_psi' }]);
  });
});

/** Ids and moments that another team's copy of a run must have of its own. */
const OWN = ['id', 'sessionId', 'trackId', 'riderId', 'bikeId', 'setupId', 'loggedAt', 'loggedBy'];

/** What a run says, wherever it is stored. */
function comparable(run: Run) {
  return rounded({ ...without(run, OWN), voided: run.voided && without(run.voided, ['at']) });
}

/** To nine digits: a figure that went to SI units and back twice may differ in its last bits. */
const rounded = (value: object): unknown =>
  JSON.parse(JSON.stringify(value), (_, entry: unknown) =>
    typeof entry === 'number' ? Number(entry.toPrecision(9)) : entry,
  );
