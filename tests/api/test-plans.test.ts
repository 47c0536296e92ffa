import { replanRest, type RiderProgress } from '@loamledger/evidence';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { startService, type TestService } from './support/service.js';
import { BIKE, foundTeam, FORK, join, SETUP, SHOCK, type Stored, type TestTeam } from './support/team.js';
import { planBody, twoSetups, type PlanStep, type TestPlan } from './support/test-plan.js';

let service: TestService;
let team: TestTeam;
let setups: { before: Stored; after: Stored };
let plans: string;

beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.stop());
beforeEach(async () => {
  team = await foundTeam(service);
  setups = await twoSetups(team);
  plans = `${team.path}/test-plans`;
});

const make = async (changes: object = {}): Promise<TestPlan> =>
  (await team.coach.post(plans, { ...planBody(team, setups), ...changes }).expect(201)).body as TestPlan;
const read = async (id: string, member = team.mechanic): Promise<TestPlan> =>
  (await member.get(`${plans}/${id}`).expect(200)).body as TestPlan;
const ride = async (id: string, run: object = { timeS: 180 }): Promise<PlanStep> =>
  (await team.riderMember.post(`${plans}/${id}/runs`, run).expect(201)).body as PlanStep;
const progress = async (id: string): Promise<PlanStep> => {
  const { body } = await team.riderMember.get(`${plans}/${id}/progress`).expect(200);
  return (body as PlanStep[])[0] as PlanStep;
};
const letters = (plan: TestPlan): string => plan.runs.map(({ letter }) => letter).join('');

describe('a test plan', () => {
  it('has an order that a linear trend costs nothing, each arm equally often, and says what it can tell', async () => {
    const plan = await make();
    expect(plan.precision.varianceInflation).toBeCloseTo(1, 9);
    expect(letters(plan)).toMatch(/^[AB]{8}$/);
    expect(letters(plan).replaceAll('B', '')).toHaveLength(4);
    expect(plan.runs.map(({ position }) => position)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(plan.statement.scatterPct).toBeNull();
    expect(plan.statement.sentences.join(' ')).toContain('scatter between runs is not known yet');
    expect(plan.arms.find(({ current }) => current)?.name).toBe('As it is');
  });

  it('is the same for the same seed, and has a seed drawn where none is given', async () => {
    const [first, second] = [await make(), await make()];
    expect(letters(second)).toBe(letters(first));
    const drawn = await make({ seed: undefined });
    expect(drawn['seed']).toEqual(expect.any(Number));
    expect(letters(await make({ seed: drawn['seed'] }))).toBe(letters(drawn));
  });

  it('of one run an arm says that no test is possible', async () => {
    const plan = await make({ runsAnArm: 1 });
    expect(plan.precision.varianceInflation).toBeNull();
    expect(plan.statement.sentences.join(' ')).toContain('no test is possible');
  });

  it("takes its number of runs from the difference to be told, once the team's scatter is known", async () => {
    const { body } = await team.coach
      .post(plans, { ...planBody(team, setups), runsAnArm: undefined, differenceToTellPct: 3 })
      .expect(422);
    expect(body).toMatchObject({ code: 'test-plan.scatter-unknown' });
    for (const timeS of [180, 182, 179.5, 181, 180.5, 182.2, 180.1, 181.3]) {
      const run = { bikeId: team.bike.id, trackId: team.track.id, day: '2026-05-02', timeS };
      await team.mechanic.post(`${team.path}/runs`, run).expect(201);
    }
    const plan = await make({ runsAnArm: undefined, differenceToTellPct: 3 });
    expect(plan['runsAnArm']).toBeGreaterThanOrEqual(2);
    expect(plan.statement.scatterPct).toBeGreaterThan(0.1);
    expect(plan.statement.scatterPct).toBeLessThan(2);
    const tooSmall = { ...planBody(team, setups), runsAnArm: undefined, differenceToTellPct: 0.1 };
    const refused = await team.coach.post(plans, tooSmall).expect(422);
    expect(refused.body).toMatchObject({ code: 'test-plan.too-many-runs' });
  });

  it('gives riders on their own bikes each their own set-up of the arm', async () => {
    const { mechanic, path } = team;
    const create = async (things: string, body: object) =>
      (await mechanic.post(`${path}/${things}`, body).expect(201)).body as Stored;
    const rider = await create('riders', { name: 'Rider B', readyMassKg: 70 });
    const fork = await create('spring-units', { ...FORK, name: 'Fork 2' });
    const shock = await create('spring-units', { ...SHOCK, name: 'Shock 2' });
    const wheels = { riderId: rider.id, forkUnitId: fork.id, shockUnitId: shock.id };
    const bike = await create('bikes', { ...BIKE, name: 'Bike 2', ...wheels });
    const before = await create('setups', { ...SETUP, bikeId: bike.id });
    const after = await create('setups', { ...SETUP, bikeId: bike.id, fork: { ...SETUP.fork, spacers: 2 } });
    const body = planBody(team, setups);
    const arms = body.arms.map((arm, i) => ({
      ...arm,
      setups: [...arm.setups, { bikeId: bike.id, setupId: (i === 0 ? before : after).id }],
    }));
    const riders = [...body.riders, { riderId: rider.id, bikeId: bike.id }];
    await team.coach.post(plans, { ...body, riders }).expect(422);
    const plan = await make({ riders, arms });
    expect(plan.runs).toHaveLength(16);
    const { body: places } = await mechanic.get(`${plans}/${plan.id}/progress`).expect(200);
    const next = (places as PlanStep[]).map(({ nextSetupId }) => nextSetupId);
    for (const id of next) expect([setups.before.id, setups.after.id, before.id, after.id]).toContain(id);
    expect(new Set(next).size).toBe(2);
  });

  it.each([
    [{ arms: [] }, 'test-plan.one-arm'],
    [{ riders: [] }, 'test-plan.no-rider'],
    [{ trackId: undefined }, 'test-plan.place-unclear'],
    [{ runsAnArm: undefined }, 'test-plan.size-unclear'],
    [{ differenceToTellPct: 1 }, 'test-plan.size-unclear'],
    [{ runsAnArm: 20, trend: 'quadratic' }, undefined],
  ])('is refused or made: %o', async (changes, code) => {
    const { status, body } = await team.coach.post(plans, { ...planBody(team, setups), ...changes });
    expect([status, (body as { code?: string }).code]).toEqual([code ? 422 : 201, code]);
  });

  it('is refused where both arms are one set-up', async () => {
    const same = { before: setups.before, after: setups.before };
    const { body } = await team.coach.post(plans, planBody(team, same)).expect(422);
    expect(body).toMatchObject({ code: 'test-plan.same-setup-twice' });
  });

  it('is made once under one idempotency key', async () => {
    const send = () => team.coach.post(plans, planBody(team, setups)).set('idempotency-key', 'plan');
    const [first, second] = [await send().expect(201), await send().expect(201)];
    expect((second.body as Stored).id).toBe((first.body as Stored).id);
  });

  it("is not there for another team's people, nor for a rider who does not ride in it", async () => {
    const plan = await make();
    const other = await foundTeam(service, 'Team 2');
    await other.mechanic.get(`${other.path}/test-plans/${plan.id}`).expect(404);
    const rider = (await team.mechanic.post(`${team.path}/riders`, { name: 'Rider B', readyMassKg: 70 }))
      .body as Stored;
    const stranger = await join(service, team, { role: 'rider', riderId: rider.id });
    await stranger.get(`${plans}/${plan.id}`).expect(404);
    expect((await stranger.get(plans).expect(200)).body).toMatchObject({ items: [] });
    expect((await team.riderMember.get(plans).expect(200)).body).toMatchObject({ items: [{ id: plan.id }] });
  });
});

describe('riding a plan', () => {
  it('logs run after run on the set-up of its arm, until nothing is left', async () => {
    const plan = await make({ runsAnArm: 2, warmUps: 1 });
    expect(plan.runs[0]).toMatchObject({ kind: 'warm-up', letter: plan.runs[1]?.letter });
    for (let left = 4; left >= 0; left -= 1) expect(await ride(plan.id)).toMatchObject({ left });
    const { body } = await team.riderMember.post(`${plans}/${plan.id}/runs`, { timeS: 180 }).expect(409);
    expect(body).toMatchObject({ code: 'test-plan.nothing-left' });
    const ridden = await read(plan.id);
    const setupOf = new Map(ridden.arms.map((arm) => [arm.letter, arm.setups[0]?.['setupId']]));
    for (const { runId, letter } of ridden.runs) {
      const run = (await team.mechanic.get(`${team.path}/runs/${runId}`).expect(200)).body as Stored;
      expect(run['setupId']).toBe(setupOf.get(letter));
      expect(run['day']).toBe('2026-05-09');
    }
  });

  it('refuses a run that was ridden at another place than the next, and takes nothing of it', async () => {
    const plan = await make({ runsAnArm: 2, warmUps: 0 });
    const runs = `${plans}/${plan.id}/runs`;
    await team.riderMember.post(runs, { timeS: 180, position: 1 }).expect(201);
    const { body } = await team.riderMember.post(runs, { timeS: 181, position: 1 }).expect(409);
    expect(body).toMatchObject({ code: 'test-plan.moved-on' });
    await team.riderMember.post(runs, { timeS: 181, position: 0 }).expect(422);
    const ridden = (await read(plan.id)).runs.filter(({ runId }) => runId !== null);
    expect(ridden).toHaveLength(1);
    await team.riderMember.post(runs, { timeS: 181, position: 2 }).expect(201);
  });

  it('orders the rest anew when a run is spoilt: the arm is ridden once more, still balanced', async () => {
    const plan = await make();
    await ride(plan.id);
    const spoilt = await ride(plan.id, { spoilt: { reason: 'Slid out.' } });
    expect(spoilt).toMatchObject({ ridden: 2, left: 7, restIsStale: false, voidedRunIds: [spoilt.runId] });
    const after = await read(plan.id);
    expect(after.version).toBeGreaterThan(plan.version);
    expect(after.runs.slice(0, 2).map(({ letter }) => letter)).toEqual(
      plan.runs.slice(0, 2).map(({ letter }) => letter),
    );
    const counting = after.runs.filter(({ runId }) => runId !== spoilt.runId);
    expect(counting.filter(({ letter }) => letter === 'A')).toHaveLength(4);
    expect(counting.filter(({ letter }) => letter === 'B')).toHaveLength(4);
    expect(counting.map(({ position }) => position)).toEqual([1, 3, 4, 5, 6, 7, 8, 9]);
    const mean = (letter: string) => {
      const places = counting.filter((run) => run.letter === letter).map(({ position }) => position);
      return places.reduce((sum, place) => sum + place, 0) / places.length;
    };
    // The places are 1 and 3 to 9, 43 together: means of 21/4 and 22/4 are as near as four and four can be.
    expect(Math.abs(mean('A') - mean('B'))).toBeLessThanOrEqual(0.25);
  });

  it('orders the rest of one rider by what the other rode and has still to ride', async () => {
    const other = (
      await team.mechanic.post(`${team.path}/riders`, { name: 'Rider B', readyMassKg: 70 }).expect(201)
    ).body as Stored;
    const riders = [team.rider.id, other.id].map((riderId) => ({ riderId, bikeId: team.bike.id }));
    const plan = await make({ riders, runsAnArm: 6 });
    const logFor = async (riderId: string, run: object = { timeS: 180 }) =>
      (await team.coach.post(`${plans}/${plan.id}/runs`, { ...run, riderId }).expect(201)).body as PlanStep;
    for (let i = 0; i < 3; i += 1) await logFor(other.id);
    await logFor(team.rider.id);
    await logFor(team.rider.id, { spoilt: { reason: 'Slid out.' } });

    const asked = planBody(team, setups);
    const letters = asked.arms.map(({ name: arm }) => ({
      arm,
      letter: plan.arms.find(({ name }) => name === arm)?.letter ?? '',
    }));
    const armOf = new Map(letters.map(({ arm, letter }) => [letter, arm]));
    const planned = plan.runs.map((run) => ({
      ...run,
      rider: run.riderId,
      arm: armOf.get(run.letter) ?? '',
    }));
    const of = (rider: string, ridden: number, spoilt?: number): RiderProgress => {
      const own = planned.filter((run) => run.rider === rider);
      return {
        rider,
        ridden: own.slice(0, ridden).map(({ arm, position }, i) => ({ arm, position, voided: i === spoilt })),
        rest: own.slice(ridden).map(({ arm }) => arm),
      };
    };
    const progress = [of(team.rider.id, 2, 1), of(other.id, 3)];
    const expected = (known: RiderProgress[]) =>
      replanRest({ letters, runs: planned, seed: asked.seed }, team.rider.id, known);
    const after = (await read(plan.id)).runs.filter(
      ({ riderId, runId }) => riderId === team.rider.id && !runId,
    );
    const order = (runs: readonly { letter: string; position: number }[]) =>
      runs.map(({ letter, position }) => `${position} ${letter}`);
    expect(order(after)).toEqual(order(expected(progress)));
    expect(order(after)).not.toEqual(order(expected(progress.slice(0, 1))));
  });

  it('orders the rest anew when a run of the plan is voided, here or elsewhere', async () => {
    const plan = await make();
    const first = await ride(plan.id);
    const second = await ride(plan.id);
    const { body: here } = await team.riderMember
      .post(`${plans}/${plan.id}/void-runs`, { runId: first.runId, reason: 'Chain off.' })
      .expect(201);
    expect(here).toMatchObject({ left: 7, restIsStale: false });
    const { headers } = await team.mechanic.get(`${plans}/${plan.id}`).expect(200);
    await team.mechanic.post(`${team.path}/runs/${second.runId}/void`, { reason: 'Held up.' }).expect(200);
    // The plan itself is as it was; what is read of it is not, and a browser must not keep what it has.
    await team.mechanic.get(`${plans}/${plan.id}`).set('if-none-match', String(headers['etag'])).expect(200);
    expect(await progress(plan.id)).toMatchObject({ left: 7, restIsStale: true });
    const rest = { riderId: team.rider.id };
    const { body: there } = await team.coach.post(`${plans}/${plan.id}/rest`, rest).expect(200);
    expect(there).toMatchObject({ left: 8, restIsStale: false });
    await team.mechanic.post(`${team.path}/runs/${second.runId}/restore`).expect(200);
    const { body: back } = await team.coach.post(`${plans}/${plan.id}/rest`, rest).expect(200);
    expect(back).toMatchObject({ left: 7, restIsStale: false });
  });

  it('attaches a run that was logged before to the place of its set-up, once', async () => {
    const plan = await make();
    const where = { bikeId: team.bike.id, trackId: team.track.id, day: '2026-05-09', timeS: 181 };
    const log = async (setupId: string) =>
      (await team.riderMember.post(`${team.path}/runs`, { ...where, setupId }).expect(201)).body as Stored;
    const run = await log(setups.after.id);
    const attach = (runId: string) => team.riderMember.post(`${plans}/${plan.id}/attached-runs`, { runId });
    expect((await attach(run.id).expect(201)).body).toMatchObject({ runId: run.id, left: 7 });
    await attach(run.id).expect(409);
    const other = (
      await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: team.bike.id }).expect(201)
    ).body as Stored;
    const { body } = await attach((await log(other.id)).id).expect(422);
    expect(body).toMatchObject({ code: 'test-plan.run-does-not-fit' });
  });

  it('takes no run from elsewhere', async () => {
    const create = async (things: string, body: object) =>
      (await team.mechanic.post(`${team.path}/${things}`, body).expect(201)).body as Stored;
    const track = await create('tracks', { name: 'Root Garden', altitudeM: 900 });
    const session = await create('sessions', { trackId: track.id, day: '2026-05-09', condition: 'dry' });
    const plan = await make();
    const { body } = await team.riderMember
      .post(`${plans}/${plan.id}/runs`, { timeS: 180, sessionId: session.id })
      .expect(422);
    expect(body).toMatchObject({ errors: [{ field: 'sessionId', given: session.id }] });
    expect(await progress(plan.id)).toMatchObject({ ridden: 0 });
    const run = await create('runs', {
      bikeId: team.bike.id,
      sessionId: session.id,
      setupId: setups.after.id,
    });
    const attach = { runId: run.id };
    await team.riderMember.post(`${plans}/${plan.id}/attached-runs`, attach).expect(422);
  });

  it('takes no run once it is closed, and is closed once, by who read it last', async () => {
    const plan = await make();
    await ride(plan.id);
    const close = (version: number) =>
      team.coach.put(`${plans}/${plan.id}/closing`, { note: 'Rain.' }, version);
    await close(plan.version).expect(412);
    const { body } = await close((await read(plan.id)).version).expect(200);
    expect(body).toMatchObject({ closingNote: 'Rain.', closedAt: expect.any(String) as string });
    await close((body as Stored).version).expect(409);
    const refused = await team.riderMember.post(`${plans}/${plan.id}/runs`, { timeS: 180 }).expect(409);
    expect(refused.body).toMatchObject({ code: 'test-plan.closed' });
  });
});

describe('a blind plan', () => {
  it('shows its riders letters only until it is closed', async () => {
    const plan = await make({ blind: true });
    expect(plan.arms.map(({ name }) => name).toSorted()).toEqual(['As it is', 'One spacer more']);
    const seen = await read(plan.id, team.riderMember);
    expect(seen).toMatchObject({
      seed: null,
      arms: [
        { letter: 'A', name: null, current: null, setups: [] },
        { letter: 'B', name: null, current: null, setups: [] },
      ],
    });
    expect(letters(seen)).toBe(letters(plan));
    const step = await ride(plan.id);
    expect(step.nextSetupId).toBeNull();
    expect(step.next?.letter).toBe(plan.runs[1]?.letter);
    const text = JSON.stringify([seen, step, await progress(plan.id)]);
    for (const setup of [setups.before, setups.after]) expect(text).not.toContain(setup.id);
    const { version } = await read(plan.id);
    await team.coach.put(`${plans}/${plan.id}/closing`, {}, version).expect(200);
    expect((await read(plan.id, team.riderMember)).arms).toEqual((await read(plan.id)).arms);
  });
});
