import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { asOwner } from './support/owner.js';
import { startService, type TestService } from './support/service.js';
import { foundTeam, SETUP, type Stored, type TestTeam } from './support/team.js';

interface Fill {
  pressurePsi: number;
  spacers: number;
}
interface End {
  evidence: { level: string; ownHere: number };
  current: Fill | null;
  steps: Fill[];
  assumed: object[];
}
interface Baseline {
  id: string;
  fork: End;
  shock: End;
  runCount: number;
}

let service: TestService;
let team: TestTeam;
let other: TestTeam;

beforeAll(async () => {
  service = await startService();
  team = await foundTeam(service);
  other = await foundTeam(service, 'Team 2');
  await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: team.bike.id }).expect(201);
});
afterAll(() => service.stop());

const read = async (): Promise<Baseline> => {
  const path = `${team.path}/baselines?trackId=${team.track.id}`;
  const { items } = (await team.mechanic.get(path).expect(200)).body as { items: Baseline[] };
  return items[0] as Baseline;
};
/** A baseline without the moment at which it was computed. */
const timeless = (baseline: object): object => ({ ...baseline, computedAt: null });
const ride = async (travelLeftMm: number): Promise<Stored> => {
  const run = { bikeId: team.bike.id, trackId: team.track.id, day: '2026-05-09', fork: { travelLeftMm } };
  return (await team.mechanic.post(`${team.path}/runs`, run).expect(201)).body as Stored;
};

describe('a baseline', () => {
  it('without any run rests on physics only, and says so', async () => {
    const baseline = await read();
    expect(baseline.fork.evidence.level).toBe('physics only');
    expect(baseline.runCount).toBe(0);
    expect(baseline.fork.assumed.length).toBeGreaterThan(0);
  });

  it('rests on the rider here after three runs, and counts them', async () => {
    for (const left of [30, 35, 38]) await ride(left);
    const baseline = await read();
    expect(baseline.fork.evidence).toMatchObject({ level: 'rider here', ownHere: 3 });
    expect(baseline.runCount).toBe(3);
  });

  it('is the same one as long as nothing behind it changes, also for ten who ask at once', async () => {
    await ride(33);
    const baselines = await Promise.all(Array.from({ length: 10 }, read));
    expect(new Set(baselines.map(({ id }) => id)).size).toBe(1);
  });

  it('is offered anew when a run is void, and again when it counts', async () => {
    const run = await ride(10);
    const before = await read();
    await team.mechanic.post(`${team.path}/runs/${run.id}/void`, { reason: 'Slid out.' }).expect(200);
    const after = await read();
    expect(after.id).not.toBe(before.id);
    expect(after.runCount).toBe(before.runCount - 1);
  });

  it('that was lost is computed anew as it was, since it follows from the records alone', async () => {
    const { id, ...answer } = await read();
    // The fit behind it goes too: what is computed anew must lean on nothing that was computed before.
    const fits = 'delete from demand_fit where team_id = $1 returning "end"';
    expect(await asOwner(service, fits, team.id)).toHaveLength(2);
    expect(await asOwner(service, 'delete from baseline where id = $1 returning id', id)).toHaveLength(1);
    const { id: newId, ...again } = await read();
    expect(newId).not.toBe(id);
    expect(timeless(again)).toEqual(timeless(answer));
  });

  it('is taken once: the next set-up, a decision with what is expected, and the old offer is refused', async () => {
    const baseline = await read();
    const path = `${team.path}/baselines/${baseline.id}/take`;
    const taken = await team.mechanic.post(path, {}).expect(201);
    expect(taken.body).toMatchObject({ bikeId: team.bike.id, revision: 2 });
    const decisions = (await team.mechanic.get(`${team.path}/decisions`).expect(200)).body as {
      items: { toSetupId: string; baselineId: string; expected: object | null }[];
    };
    expect(decisions.items[0]).toMatchObject({
      toSetupId: (taken.body as Stored).id,
      baselineId: baseline.id,
      expected: { fork: { sagPct: expect.any(Number) as number } },
    });
    const again = await team.mechanic.post(path, {}).expect(409);
    expect((again.body as { code: string }).code).toBe('baseline.superseded');
  });

  it('of another team does not exist', async () => {
    const { id } = await read();
    await other.mechanic.get(`${other.path}/baselines/${id}`).expect(404);
    await other.mechanic.post(`${other.path}/baselines/${id}/take`, {}).expect(404);
  });
});
