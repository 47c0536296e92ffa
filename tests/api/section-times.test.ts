import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { startService, type TestService } from './support/service.js';
import { foundTeam, SETUP, type Stored, type TestTeam } from './support/team.js';
import { twoSetups } from './support/test-plan.js';

let service: TestService;
let team: TestTeam;
let track: Stored;
beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.stop());
beforeEach(async () => {
  team = await foundTeam(service);
  const sections = ['Upper woods', 'Stairs', 'Finish, lower'];
  track = await create('tracks', { name: 'Three parts', altitudeM: 900, sections });
});

const create = async (things: string, body: object) =>
  (await team.mechanic.post(`${team.path}/${things}`, body).expect(201)).body as Stored;
const run = (sectionTimes: object[], change: object = {}) => ({
  bikeId: team.bike.id,
  trackId: track.id,
  day: '2026-05-09',
  timeS: 180,
  sectionTimes,
  ...change,
});
const of = (section: string, timeS: number) => ({ section, timeS });
const exported = async (member = team.mechanic) =>
  (await member.get(`${team.path}/runs/export`).expect(200)).text;

describe('the times of sections', () => {
  beforeEach(async () => {
    await create('setups', { ...SETUP, bikeId: team.bike.id });
  });

  it('are kept in riding order under the names of the track, whatever the case and order they come in', async () => {
    const stored = await create('runs', run([of('stairs', 41.2), of('UPPER WOODS', 77)]));
    const times = [of('Upper woods', 77), of('Stairs', 41.2)];
    expect(stored).toMatchObject({ timeS: 180, sectionTimes: times });
    expect((await team.mechanic.get(`${team.path}/runs/${stored.id}`)).body).toMatchObject({
      sectionTimes: times,
    });
    expect(await create('runs', run([]))).toMatchObject({ sectionTimes: [] });
  });

  it('stay under their names when the track is changed', async () => {
    const stored = await create('runs', run([of('Stairs', 41.2)]));
    const changed = { name: 'Three parts', altitudeM: 900, sections: ['Steps'] };
    await team.mechanic.put(`${team.path}/tracks/${track.id}`, changed, track.version).expect(200);
    expect((await team.mechanic.get(`${team.path}/runs/${stored.id}`)).body).toMatchObject({
      sectionTimes: [of('Stairs', 41.2)],
    });
  });

  it.each([
    ['a section that the track does not have', [of('Rock garden', 40)], 'sectionTimes.0.section'],
    ['a section twice', [of('Stairs', 40), of('stairs', 41)], 'sectionTimes.1.section'],
    ['more than the run took', [of('Stairs', 100), of('Upper woods', 81)], 'sectionTimes'],
    ['no time at all', [of('Stairs', 0)], 'sectionTimes.0.timeS'],
  ])('are refused with %s', async (_, sectionTimes, field) => {
    const { body } = await team.mechanic.post(`${team.path}/runs`, run(sectionTimes)).expect(422);
    expect((body as { errors: { field: string }[] }).errors[0]?.field).toBe(field);
  });

  it('may be rounded up to the tenth, each of them', async () => {
    await create('runs', run([of('Upper woods', 60.1), of('Stairs', 60), of('Finish, lower', 60)]));
  });

  it('go out as CSV and come back the same', async () => {
    await create('runs', run([of('Upper woods', 77), of('Finish, lower', 58.3)]));
    await create('runs', run([of('Stairs', 41.2)]));
    const csv = await exported();
    expect(csv.split('\r\n')[0]).toContain(
      ',section_s: upper woods,"section_s: finish, lower",section_s: stairs',
    );
    const other = await foundTeam(service, 'Team 2');
    const sections = ['Upper woods', 'Stairs', 'Finish, lower'];
    await other.mechanic
      .post(`${other.path}/tracks`, { name: 'Three parts', altitudeM: 900, sections })
      .expect(201);
    await other.mechanic.postCsv(`${other.path}/runs/import`, csv).expect(201);
    expect((await other.mechanic.get(`${other.path}/runs/export`).expect(200)).text).toBe(csv);
  });

  it.each([
    ['under a section that the track does not have', 'section_s: Rock garden', '40'],
    ['that is no time', 'section_s: Stairs', 'fast'],
    ['of nothing', 'section_s: Stairs', '0'],
    ['longer than the run', 'section_s: Stairs', '200'],
  ])('of a file are refused in a cell %s, with line and column', async (_, header, cell) => {
    const csv = `date,track,bike,time_s,${header}\n2026-05-09,Three parts,Bike 1,180,${cell}\n`;
    const { body } = await team.mechanic.postCsv(`${team.path}/runs/import/preview`, csv).expect(200);
    expect((body as { problems: object[] }).problems).toMatchObject([{ line: 2, column: header }]);
  });
});

describe('a track', () => {
  it('names each section once', async () => {
    const twice = { name: 'Twice', altitudeM: 900, sections: ['Stairs', 'stairs '] };
    const { body } = await team.mechanic.post(`${team.path}/tracks`, twice).expect(422);
    expect((body as { errors: object[] }).errors[0]).toMatchObject({ field: 'sections', given: 'stairs ' });
  });
});

describe('a comparison', () => {
  it('says on which sections a difference lies, with all of them looked at', async () => {
    const { before, after } = await twoSetups(team);
    // The change takes 4 % off the stairs and nothing off the rest; scatter of 0.2 %.
    const scatter = [0.1, -0.2, 0.2, -0.1, -0.2, 0.2, 0.1, -0.1];
    for (const [i, setup] of [before, after, after, before, after, before, before, after].entries()) {
      const noise = 1 + (scatter[i] ?? 0) / 100;
      const stairs = 60 * noise * (setup === after ? 0.96 : 1);
      const times = [of('Upper woods', 70 * noise), of('Stairs', stairs)];
      await create('runs', run(times, { setupId: setup.id, timeS: 70 * noise + stairs + 50 }));
    }
    await create('runs', run([], { setupId: after.id, timeS: 180 }));
    const query = `bikeId=${team.bike.id}&trackId=${track.id}&currentSetupId=${before.id}`;
    const { body } = await team.coach.get(`${team.path}/comparisons?${query}`).expect(200);
    const { sections } = body as {
      sections: { section: string; arms: { verdict: string; timedRuns: number }[] }[];
    };
    expect(sections.map(({ section }) => section)).toEqual(['Upper woods', 'Stairs']);
    expect(sections[0]?.arms).toMatchObject([
      { verdict: 'no practical difference', timedRuns: 4, setupId: after.id },
    ]);
    expect(sections[1]?.arms).toMatchObject([{ verdict: 'faster', timedRuns: 4 }]);
  });
});

describe('a run without a session', () => {
  beforeEach(async () => {
    await create('setups', { ...SETUP, bikeId: team.bike.id });
  });
  const inWeather = async (airTemperatureC?: number) =>
    (await create('runs', run([], airTemperatureC === undefined ? {} : { airTemperatureC })))['sessionId'];

  it('belongs to the session of its temperature; another temperature is another session', async () => {
    const morning = await inWeather(4);
    const afternoon = await inWeather(16);
    expect(afternoon).not.toBe(morning);
    expect(await inWeather(4)).toBe(morning);
    // Nothing said: where the day's riding is by now.
    expect(await inWeather()).toBe(afternoon);
  });
});
