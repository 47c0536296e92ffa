import { Client } from 'pg';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { cpuMsOf } from '../support/cpu.js';
import { GATES, gpxOf, segmentOf } from '../support/recording.js';
import { startService, type TestService } from './support/service.js';
import { foundTeam, SETUP, type Stored, type TestTeam } from './support/team.js';

interface Recorded {
  readonly fixes: number;
  readonly runs: readonly { startedAt: string; day: string; timeS: number; timeSdS: number }[];
  readonly problems: readonly string[];
}

const [FIRST, SECOND] = ['2026-05-09T10:30:00Z', '2026-05-09T11:00:00Z'];
const TWO_RUNS = gpxOf(segmentOf(FIRST, 8), segmentOf(SECOND, 10));

let service: TestService;
let team: TestTeam;
let other: TestTeam;
beforeAll(async () => {
  service = await startService();
  [team, other] = [await foundTeam(service), await foundTeam(service, 'Team 2')];
  const track = { name: 'Quarry Stairs', altitudeM: 1_450, ...GATES };
  await team.mechanic.put(`${team.path}/tracks/${team.track.id}`, track, 1).expect(200);
  await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: team.bike.id }).expect(201);
});
afterAll(() => service.stop());

function send(gpx: string, what: 'preview' | '' = '', more = '', by = team.coach) {
  const query = `trackId=${team.track.id}&bikeId=${team.bike.id}${more}`;
  return by
    .send('post', `${team.path}/runs/import-recording${what && `/${what}`}?${query}`)
    .set('content-type', 'application/gpx+xml')
    .send(gpx);
}
const runsOf = async () =>
  ((await team.mechanic.get(`${team.path}/runs?limit=500`).expect(200)).body as { items: Stored[] }).items;

describe('a recording', () => {
  it('is shown as runs with their uncertainty before anything is stored', async () => {
    const { body } = await send(TWO_RUNS, 'preview', '&positionSdM=4').expect(200);
    const { runs, problems, fixes } = body as Recorded;
    expect(problems).toEqual([]);
    expect(fixes).toBeGreaterThan(150);
    expect(runs.map(({ timeS }) => timeS)).toEqual([75, 60]);
    for (const [i, { startedAt, day, timeSdS }] of runs.entries()) {
      expect(Math.abs(Date.parse(startedAt) - Date.parse([FIRST, SECOND][i] ?? ''))).toBeLessThan(10);
      expect(day).toBe('2026-05-09');
      // Position over speed at each gate, and a little for the speed between two fixes.
      const position = (4 / ([8, 10][i] ?? 0)) * Math.SQRT2;
      expect(timeSdS).toBeGreaterThanOrEqual(position - 0.01);
      expect(timeSdS).toBeLessThan(position * 1.05);
    }
    expect(await runsOf()).toEqual([]);
  });

  it('is stored whole, with set-up, start and what the time is good to, and not a second time', async () => {
    await send(TWO_RUNS).set('idempotency-key', 'recording').expect(201);
    await send(TWO_RUNS).set('idempotency-key', 'recording').expect(201);
    const stored = await runsOf();
    expect(stored.map((run) => run['timeS']).toSorted()).toEqual([60, 75]);
    for (const run of stored) {
      expect(run).toMatchObject({ bikeId: team.bike.id, trackId: team.track.id });
      expect(run['note']).toMatch(/^Time cut from a recording, good to ±\d\.\d s \(95 %\)\.$/);
    }
    const { body } = await send(TWO_RUNS, 'preview').expect(200);
    expect((body as Recorded).problems).toHaveLength(2);
    const third = gpxOf(segmentOf(SECOND, 10), segmentOf('2026-05-09T12:00:00Z', 9));
    const { body: refused } = await send(third).expect(422);
    expect(refused).toMatchObject({ code: 'recording.refused' });
    expect((refused as { detail: string }).detail).toContain('is stored already');
    expect(await runsOf()).toHaveLength(2);
  });

  it('asks for the records of many runs as often as for those of one', async () => {
    const statements = async (day: string, hours: readonly string[]) => {
      const asked = vi.spyOn(Client.prototype, 'query');
      await send(gpxOf(...hours.map((hour) => segmentOf(`${day}T${hour}:30:00Z`, 8)))).expect(201);
      const count = asked.mock.calls.length;
      asked.mockRestore();
      return count;
    };
    const one = await statements('2026-05-11', ['10']);
    expect(one).toBeGreaterThan(5);
    expect(await statements('2026-05-12', ['10', '11', '12', '13'])).toBe(one);
  });

  it('belongs to the day by the clock at the track', async () => {
    const late = gpxOf(segmentOf('2026-05-09T23:30:00Z', 8));
    const dayWith = async (more: string) =>
      ((await send(late, 'preview', more).expect(200)).body as Recorded).runs[0]?.day;
    expect(await dayWith('')).toBe('2026-05-09');
    expect(await dayWith('&utcOffsetMin=120')).toBe('2026-05-10');
    expect(await dayWith('&utcOffsetMin=-600')).toBe('2026-05-09');
  });

  it('without a run between the gates, or on a track without gates, is refused with the reason', async () => {
    const elsewhere = TWO_RUNS.replaceAll('lon="8.1"', 'lon="8.2"');
    const { body } = await send(elsewhere, 'preview').expect(200);
    expect((body as Recorded).problems[0]).toContain('Quarry Stairs');
    await send(elsewhere).expect(422);
    const { body: plain } = await team.mechanic
      .post(`${team.path}/tracks`, { name: 'No gates', altitudeM: 900 })
      .expect(201);
    const query = `trackId=${(plain as Stored).id}&bikeId=${team.bike.id}`;
    const { body: refused } = await team.coach
      .send('post', `${team.path}/runs/import-recording/preview?${query}`)
      .set('content-type', 'application/gpx+xml')
      .send(TWO_RUNS)
      .expect(422);
    expect(refused).toMatchObject({ code: 'recording.no-gates' });
  });

  it('that declares entities is refused before one of them is looked at', async () => {
    const grows = ['a', 'b', 'c', 'd'].map(
      (name, i, all) => `<!ENTITY ${name} "${i === 0 ? 'x' : `&${all[i - 1]};`.repeat(50)}">`,
    );
    const bomb = TWO_RUNS.replace('<gpx', `<!DOCTYPE gpx [${grows.join('')}]>\n<gpx`).replace('1450', '&d;');
    const reaching = `<!DOCTYPE gpx SYSTEM "file:///etc/passwd">${gpxOf(segmentOf(FIRST, 8)).slice(39)}`;
    for (const file of [bomb, reaching]) {
      const { body } = await send(file, 'preview').expect(422);
      expect(body).toMatchObject({ code: 'recording.not-gpx' });
      expect((body as { detail: string }).detail).toContain('without a document type');
    }
    await send(TWO_RUNS.replace('1450', '&d;'), 'preview').expect(422);
  });

  it.each([
    ['', 'nothing'],
    ['date,track\n', 'another format'],
    [gpxOf().replace('1.1', '1.0'), 'another version'],
    [TWO_RUNS.slice(0, 500), 'a file that was cut off'],
    [TWO_RUNS.replaceAll(/<time>[^<]*<\/time>/g, ''), 'no times'],
    [TWO_RUNS.replace('lat="46', 'lat="146'), 'a place that is none'],
    [gpxOf(segmentOf(SECOND, 10), segmentOf(FIRST, 8)), 'times that go back'],
  ])('that is none is refused with its line: %#', async (file) => {
    const answer = await send(file, 'preview');
    expect([400, 422]).toContain(answer.status);
    await send(file).expect(answer.status);
  });

  it('nested without end is refused at once', async () => {
    const cost = await cpuMsOf(async () => {
      const { body } = await send(gpxOf('<a>'.repeat(1_300_000)), 'preview').expect(422);
      expect((body as { detail: string }).detail).toContain('nested at most 50 deep');
    });
    expect(cost).toBeLessThan(1_000);
  });

  it('larger than is taken, or not as text, is refused', async () => {
    await send(TWO_RUNS + ' '.repeat(4 * 1024 * 1024), 'preview').expect(413);
    await team.coach
      .post(`${team.path}/runs/import-recording/preview?trackId=${team.track.id}&bikeId=${team.bike.id}`, {})
      .expect(400);
  });

  it("is not a rider's to import, and names nothing of another team", async () => {
    await send(TWO_RUNS, 'preview', '', team.riderMember).expect(403);
    const query = `trackId=${other.track.id}&bikeId=${team.bike.id}`;
    await team.coach
      .send('post', `${team.path}/runs/import-recording/preview?${query}`)
      .set('content-type', 'application/gpx+xml')
      .send(TWO_RUNS)
      .expect(404);
    await send(TWO_RUNS, 'preview', `&condition=icy`).expect(422);
    await send(TWO_RUNS, 'preview', `&positionSdM=0`).expect(422);
  });
});

describe('a gate', () => {
  const save = (gates: object) =>
    team.mechanic.post(`${team.path}/tracks`, { name: 'Gates', altitudeM: 1, ...gates });

  it('is a line across a track: neither a point nor a way', async () => {
    const { startGate } = GATES;
    const point = { ...startGate, toLongitudeDeg: startGate.fromLongitudeDeg };
    const way = { ...startGate, toLongitudeDeg: startGate.fromLongitudeDeg + 1 };
    for (const wrong of [point, way]) {
      const { body } = await save({ startGate: wrong }).expect(422);
      expect(body).toMatchObject({ code: 'track.gate-length', errors: [{ field: 'startGate' }] });
    }
    await save({ startGate: { ...startGate, toLatitudeDeg: 91 } }).expect(422);
    await save({ startGate: { fromLatitudeDeg: 1 } }).expect(422);
  });

  it('comes back as it was entered, and is taken away by null', async () => {
    const { body } = await save(GATES).expect(201);
    const { id, startGate } = body as Stored & { startGate: Record<string, number> };
    for (const [name, degrees] of Object.entries(GATES.startGate)) {
      expect(startGate[name]).toBeCloseTo(degrees, 9);
    }
    const at = `${team.path}/tracks/${id}`;
    const { body: without } = await team.mechanic
      .put(at, { name: 'Gates', altitudeM: 1, startGate: null }, 1)
      .expect(200);
    expect(without).toMatchObject({ startGate: null, finishGate: null });
  });
});
