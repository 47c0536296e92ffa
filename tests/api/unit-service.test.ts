import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { startService, type TestService } from './support/service.js';
import { foundTeam, SETUP, type Stored, type TestTeam } from './support/team.js';
import { without } from './support/without.js';

let service: TestService;
let team: TestTeam;
let fork: string;
beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.stop());
beforeEach(async () => {
  team = await foundTeam(service);
  fork = `${team.path}/spring-units/${team.fork.id}`;
  await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: team.bike.id }).expect(201);
});

const standing = async (unit = fork) =>
  ((await team.mechanic.get(`${unit}/service`).expect(200)).body as { standing: Record<string, unknown> })
    .standing;
const logRun = async (day: string, timeS: number | null, trackId = team.track.id) => {
  const run = { bikeId: team.bike.id, trackId, day, timeS };
  return (await team.riderMember.post(`${team.path}/runs`, run).expect(201)).body as Stored;
};
const enter = async (entry: object, unit = fork) =>
  (
    await team.mechanic
      .post(`${unit}/service-entries`, { doneBy: 'Workshop', day: '2026-05-09', ...entry })
      .expect(201)
  ).body as Stored;

describe('riding since the last service', () => {
  it('is nothing before the first run, and not measured against an interval that nobody entered', async () => {
    expect(await standing()).toEqual({
      intervalHours: null,
      lastServiceDay: null,
      hoursSince: 0,
      hoursLeft: null,
      isDue: false,
      timedRuns: 0,
      timedHours: 0,
      assumedRuns: 0,
      assumedHours: 0,
      uncountedRuns: 0,
      enteredHours: 0,
    });
  });

  it('is timed runs, untimed ones at the mean of their track, and what was entered; and says which is which', async () => {
    const { body } = await team.mechanic
      .post(`${team.path}/tracks`, { name: 'Untimed', altitudeM: 900 })
      .expect(201);
    await logRun('2026-05-09', 1_800);
    await logRun('2026-05-09', 3_600);
    await logRun('2026-05-10', null);
    await logRun('2026-05-10', null, (body as Stored).id);
    await enter({ kind: 'hours', ridingHours: 7 });
    await team.mechanic.post(`${fork}/care`, { serviceIntervalHours: 10 }).expect(201);
    expect(await standing()).toMatchObject({
      intervalHours: 10,
      timedRuns: 2,
      timedHours: 1.5,
      assumedRuns: 1,
      assumedHours: 0.75,
      uncountedRuns: 1,
      enteredHours: 7,
      hoursSince: 9.25,
      hoursLeft: 0.75,
      isDue: false,
    });
    await enter({ kind: 'hours', ridingHours: 1 });
    expect(await standing()).toMatchObject({ hoursLeft: -0.25, isDue: true });
  });

  it('begins anew on the day of a service, and that day counts as ridden after it', async () => {
    await logRun('2026-05-08', 3_600);
    await enter({ kind: 'hours', day: '2026-05-08', ridingHours: 3 });
    await logRun('2026-05-09', 1_800);
    await enter({ kind: 'service', day: '2026-05-09' });
    // An older service that is entered late changes nothing.
    await enter({ kind: 'service', day: '2026-04-01' });
    expect(await standing()).toMatchObject({ lastServiceDay: '2026-05-09', hoursSince: 0.5, timedRuns: 1 });
  });

  it('counts a void run, since it was ridden', async () => {
    const run = await logRun('2026-05-09', 3_600);
    await team.mechanic.post(`${team.path}/runs/${run.id}/void`, { reason: 'Puncture.' }).expect(200);
    expect(await standing()).toMatchObject({ timedRuns: 1, hoursSince: 1 });
  });

  it('belongs to the unit that was ridden, not to the one in the bike now', async () => {
    await logRun('2026-05-09', 3_600);
    const figures = without(team.fork, ['id', 'version', 'spacersInStock']);
    const { body } = await team.mechanic
      .post(`${team.path}/spring-units`, { ...figures, name: 'Spare fork' })
      .expect(201);
    const spare = body as Stored;
    const bike = { ...without(team.bike, ['id', 'version']), forkUnitId: spare.id };
    await team.mechanic.put(`${team.path}/bikes/${team.bike.id}`, bike, 1).expect(200);
    await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: team.bike.id }).expect(201);
    await logRun('2026-05-10', 1_800);
    expect(await standing()).toMatchObject({ hoursSince: 1 });
    expect(await standing(`${team.path}/spring-units/${spare.id}`)).toMatchObject({ hoursSince: 0.5 });
    expect(await standing(`${team.path}/spring-units/${team.shock.id}`)).toMatchObject({ hoursSince: 1.5 });
  });

  it('stands in the pit as it stands at the unit', async () => {
    await logRun('2026-05-09', 3_600);
    await team.mechanic.post(`${fork}/care`, { serviceIntervalHours: 50, capTorqueNm: 28 }).expect(201);
    const { body } = await team.coach.get(`${team.path}/pit`).expect(200);
    const [bike] = (body as { bikes: { fork: { service: unknown } }[] }).bikes;
    expect(bike?.fork.service).toEqual(await standing());
  });
});

describe('an entry', () => {
  it('is taken back by another, once, and both stay', async () => {
    const wrong = await enter({ kind: 'hours', ridingHours: 5 });
    const takeBack = `${team.path}/service-entries/${wrong.id}/take-back`;
    const { body } = await team.mechanic.post(takeBack, { note: 'It was the shock.' }).expect(201);
    expect(body).toMatchObject({ takesBackId: wrong.id, note: 'It was the shock.', unitId: team.fork.id });
    expect(await standing()).toMatchObject({ enteredHours: 0 });
    const { body: again } = await team.mechanic.post(takeBack, { note: 'Twice.' }).expect(409);
    expect(again).toMatchObject({ code: 'service.already-taken-back' });
    const back = `${team.path}/service-entries/${(body as Stored).id}/take-back`;
    await team.mechanic.post(back, { note: 'No.' }).expect(409);
    const list = (await team.coach.get(`${fork}/service-entries`).expect(200)).body as { items: Stored[] };
    expect(list.items).toMatchObject([{ takesBackId: wrong.id }, { id: wrong.id, isTakenBack: true }]);
  });

  it('of a service taken back gives the riding before it back', async () => {
    await logRun('2026-05-08', 3_600);
    const { id } = await enter({ kind: 'service' });
    expect(await standing()).toMatchObject({ hoursSince: 0 });
    await team.mechanic
      .post(`${team.path}/service-entries/${id}/take-back`, { note: 'Not done.' })
      .expect(201);
    expect(await standing()).toMatchObject({ lastServiceDay: null, hoursSince: 1 });
  });

  it('that is sent twice is one, taken back by two at once is taken back once', async () => {
    const entry = { kind: 'hours', day: '2026-05-09', ridingHours: 2, doneBy: 'Rider' };
    const send = () =>
      team.mechanic.post(`${fork}/service-entries`, entry).set('idempotency-key', 'hours').expect(201);
    const [first, second] = [(await send()).body as Stored, (await send()).body as Stored];
    expect(second).toEqual(first);
    expect(await standing()).toMatchObject({ enteredHours: 2 });
    const answers = await Promise.all(
      [1, 2, 3].map(() =>
        team.mechanic.post(`${team.path}/service-entries/${first.id}/take-back`, { note: 'Twice.' }),
      ),
    );
    expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 409, 409]);
  });

  it.each([
    [{ kind: 'hours' }, 'ridingHours'],
    [{ kind: 'service', ridingHours: 1 }, 'ridingHours'],
    [{ kind: 'hours', ridingHours: -1 }, 'ridingHours'],
    [{ kind: 'wash' }, 'kind'],
    [{ kind: 'service', day: '2026-02-30' }, 'day'],
    [{ kind: 'service', day: '2199-01-01' }, 'day'],
    [{ kind: 'service', doneBy: '' }, 'doneBy'],
  ])('is refused as %j', async (wrong, field) => {
    const entry = { day: '2026-05-09', doneBy: 'Workshop', ...wrong };
    const { body } = await team.mechanic.post(`${fork}/service-entries`, entry).expect(422);
    expect((body as { errors: { field: string }[] }).errors.map((error) => error.field)).toContain(field);
  });

  it('is for the mechanic to make, for the coach to read, and not for riders', async () => {
    const entry = { kind: 'service', day: '2026-05-09', doneBy: 'Workshop' };
    await team.coach.post(`${fork}/service-entries`, entry).expect(403);
    await team.coach.get(`${fork}/service`).expect(200);
    await team.riderMember.get(`${fork}/service`).expect(403);
    const other = await foundTeam(service, 'Team 2');
    await other.mechanic
      .post(`${other.path}/spring-units/${team.fork.id}/service-entries`, entry)
      .expect(404);
    await other.mechanic.get(`${other.path}/spring-units/${team.fork.id}/service`).expect(404);
  });
});
