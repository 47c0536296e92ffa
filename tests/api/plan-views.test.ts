import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { startService, type TestService } from './support/service.js';
import { foundTeam, type Stored, type TestTeam } from './support/team.js';
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
const list = async (query: string): Promise<readonly Stored[]> =>
  ((await team.mechanic.get(`${plans}?${query}`).expect(200)).body as { items: Stored[] }).items;

async function timeASession(): Promise<void> {
  for (const timeS of [180, 182, 179.5, 181, 180.5, 182.2, 180.1, 181.3]) {
    const run = { bikeId: team.bike.id, trackId: team.track.id, day: '2026-05-02', timeS };
    await team.mechanic.post(`${team.path}/runs`, run).expect(201);
  }
}

describe('the preview of a plan', () => {
  it('says what a plan of that size would say, and stores nothing', async () => {
    await timeASession();
    const { body } = await team.coach
      .post(`${plans}/preview`, { arms: 2, riders: 1, runsAnArm: 4, warmUps: 0 })
      .expect(200);
    const preview = body as Pick<TestPlan, 'statement' | 'precision'>;
    expect(await list('')).toEqual([]);
    const made = await make();
    expect(preview.statement).toEqual(made.statement);
    expect(preview.precision).toEqual(made.precision);
  });

  it('says how many runs a difference takes, or why that cannot be said', async () => {
    const wish = { arms: 2, riders: 1, differenceToTellPct: 3 };
    const { body } = await team.coach.post(`${plans}/preview`, wish).expect(422);
    expect(body).toMatchObject({ code: 'test-plan.scatter-unknown' });
    await timeASession();
    const { body: preview } = await team.coach.post(`${plans}/preview`, wish).expect(200);
    const { runsAnArm } = await make({ runsAnArm: undefined, differenceToTellPct: 3, warmUps: 1 });
    expect((preview as Stored)['runsAnArm']).toBe(runsAnArm);
  });

  it('is for those who may make a plan', async () => {
    const wish = { arms: 2, riders: 1, runsAnArm: 4 };
    await team.riderMember.post(`${plans}/preview`, wish).expect(403);
  });
});

describe('the list of plans', () => {
  it('tells open ones from closed ones, and how far each rider is', async () => {
    const [first, second] = [await make({ warmUps: 1 }), await make()];
    for (const run of [{ timeS: 180 }, { timeS: 181 }, { spoilt: { reason: 'Slid out.' } }]) {
      await team.riderMember.post(`${plans}/${first.id}/runs`, run).expect(201);
    }
    await team.coach.put(`${plans}/${second.id}/closing`, {}, second.version).expect(200);
    const place = { riderId: team.rider.id, bikeId: team.bike.id };
    // One warm-up, one that counts, one void: seven of eight are still to ride.
    expect(await list('state=open')).toMatchObject([
      { id: first.id, riders: [{ ...place, ridden: 1, left: 7 }] },
    ]);
    expect(await list('state=closed')).toMatchObject([
      { id: second.id, riders: [{ ...place, ridden: 0, left: 8 }] },
    ]);
    expect(await list(`trackId=${team.track.id}`)).toHaveLength(2);
    await team.mechanic.get(`${plans}?state=lost`).expect(422);
  });
});

it('the runs of a plan tell their time, and why they are void', async () => {
  const plan = await make();
  await team.riderMember.post(`${plans}/${plan.id}/runs`, { timeS: 180 }).expect(201);
  const { body: step } = await team.riderMember
    .post(`${plans}/${plan.id}/runs`, { timeS: 190, spoilt: { reason: 'Slid out.' } })
    .expect(201);
  const { body } = await team.riderMember.get(`${plans}/${plan.id}`).expect(200);
  expect((body as TestPlan).runs.slice(0, 3)).toMatchObject([
    { timeS: 180, voidReason: null },
    { runId: (step as PlanStep).runId, timeS: 190, voidReason: 'Slid out.' },
    { runId: null, timeS: null, voidReason: null },
  ]);
});
