import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { startService, type TestService } from './support/service.js';
import { foundTeam, SETUP, type Stored, type TestTeam } from './support/team.js';
import { planBody, twoSetups, type PlanStep, type TestPlan } from './support/test-plan.js';
import { without } from './support/without.js';

interface Page {
  readonly items: readonly Stored[];
}

let service: TestService;
let team: TestTeam;
let setups: { before: Stored; after: Stored };
let plan: TestPlan;
let ridden: PlanStep;

beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.stop());
/** A blind plan, open, with one run and its ring reading. */
beforeEach(async () => {
  team = await foundTeam(service);
  setups = await twoSetups(team);
  const body = { ...planBody(team, setups), blind: true };
  plan = (await team.coach.post(`${team.path}/test-plans`, body).expect(201)).body as TestPlan;
  const run = { timeS: 180, fork: { travelUsedMm: 140 } };
  ridden = (await team.riderMember.post(`${team.path}/test-plans/${plan.id}/runs`, run).expect(201))
    .body as PlanStep;
});

async function close(): Promise<void> {
  const { body } = await team.coach.get(`${team.path}/test-plans/${plan.id}`).expect(200);
  const { version } = body as Stored;
  await team.coach.put(`${team.path}/test-plans/${plan.id}/closing`, {}, version).expect(200);
}
const asRider = async (path: string): Promise<unknown> =>
  (await team.riderMember.get(`${team.path}${path}`).expect(200)).body as unknown;

describe('while a blind plan is open, its rider', () => {
  it('sees neither the set-up of a run of it, nor the hit height that would tell the spring', async () => {
    const hidden = { setupId: null, fork: { travelUsedMm: 140, hit: null } };
    expect(await asRider(`/runs/${ridden.runId}`)).toMatchObject(hidden);
    expect(await asRider('/runs')).toMatchObject({ items: [hidden] });
    const voided = await team.riderMember
      .post(`${team.path}/runs/${ridden.runId}/void`, { reason: 'Slid out.' })
      .expect(200);
    expect(voided.body).toMatchObject(hidden);
    const { readings } = (await asRider(`/tracks/${team.track.id}/demand?end=fork`)) as {
      readings: unknown[];
    };
    expect(readings).toEqual([]);
  });

  it('is not sent back to what a mechanic has read in the same browser before', async () => {
    const paths = [
      `/test-plans/${plan.id}`,
      `/runs/${ridden.runId}`,
      `/tracks/${team.track.id}/demand?end=fork`,
    ];
    for (const path of paths) {
      const { headers, body } = await team.mechanic.get(`${team.path}${path}`).expect(200);
      const asked = team.riderMember.get(`${team.path}${path}`).set('if-none-match', String(headers['etag']));
      expect((await asked.expect(200)).body).not.toEqual(body);
    }
  });

  it('gets a run of it in the CSV file without the cells of its set-up', async () => {
    const lines = async () => {
      const { text } = await team.riderMember.get(`${team.path}/runs/export`).expect(200);
      const [header = '', run = ''] = text.split('\r\n');
      const cells = run.split(',');
      return new Map(header.split(',').map((name, i) => [name, cells[i]]));
    };
    const hidden = await lines();
    for (const name of ['fork_pressure_psi', 'fork_spacers', 'shock_pressure_psi', 'shock_spacers']) {
      expect(hidden.get(name)).toBe('');
    }
    expect(hidden.get('fork_travel_used_mm')).toBe('140');
    await close();
    expect((await lines()).get('fork_pressure_psi')).toBe('65');
  });

  it.each([
    ['a list of set-ups', () => `/setups?bikeId=${team.bike.id}`],
    ['a set-up', () => `/setups/${setups.after.id}`],
    ['a list of decisions', () => `/decisions?bikeId=${team.bike.id}`],
    ['the ends at the workbench', () => `/bikes/${team.bike.id}/ends`],
    ['a baseline', () => `/baselines?trackId=${team.track.id}&bikeId=${team.bike.id}`],
    [
      'a comparison of its set-ups',
      () => `/comparisons?bikeId=${team.bike.id}&trackId=${team.track.id}&currentSetupId=${setups.before.id}`,
    ],
  ])('is refused %s of the bike, and is told why, until it is closed', async (_, path) => {
    const { body } = await team.riderMember.get(`${team.path}${path()}`).expect(409);
    expect(body).toMatchObject({ code: 'blind-plan.hidden' });
    await team.coach.get(`${team.path}${path()}`).expect(200);
    await close();
    await team.riderMember.get(`${team.path}${path()}`).expect(200);
  });

  it('finds nothing of the bike in lists of all their bikes', async () => {
    expect(((await asRider('/setups')) as Page).items).toEqual([]);
    expect(((await asRider('/decisions')) as Page).items).toEqual([]);
    expect(((await asRider(`/baselines?trackId=${team.track.id}`)) as Page).items).toEqual([]);
  });

  it('cannot find the letter of a set-up by going back to one, or by attaching a run on it', async () => {
    await team.riderMember
      .post(`${team.path}/setups/${setups.before.id}/restore`, { reason: 'Which was it?' })
      .expect(409);
    const own = { bikeId: team.bike.id, trackId: team.track.id, day: '2026-05-09', timeS: 181 };
    const run = (await team.riderMember.post(`${team.path}/runs`, own).expect(201)).body as Stored;
    const attach = { runId: run.id };
    const { body } = await team.riderMember
      .post(`${team.path}/test-plans/${plan.id}/attached-runs`, attach)
      .expect(409);
    expect(body).toMatchObject({ code: 'test-plan.blind' });
    await team.mechanic.post(`${team.path}/test-plans/${plan.id}/attached-runs`, attach).expect(201);
  });

  it('sees the set-ups of the other bikes and all when it is closed', async () => {
    const wheels = { ...without(team.bike, ['id', 'version', 'createdAt']), name: 'Bike 2' };
    const { body: other } = await team.mechanic.post(`${team.path}/bikes`, wheels).expect(201);
    await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: (other as Stored).id }).expect(201);
    expect(((await asRider('/setups')) as Page).items).toHaveLength(1);
    await close();
    expect(((await asRider('/setups')) as Page).items).toHaveLength(3);
    const run = (await asRider(`/runs/${ridden.runId}`)) as { setupId: string; fork: { hit: unknown } };
    expect([setups.before.id, setups.after.id]).toContain(run.setupId);
    expect(run.fork.hit).not.toBeNull();
  });
});

it('a plan that is not blind hides nothing from its rider', async () => {
  await close();
  const body = planBody(team, setups);
  await team.coach.post(`${team.path}/test-plans`, body).expect(201);
  expect(((await asRider(`/setups?bikeId=${team.bike.id}`)) as Page).items).toHaveLength(2);
});
