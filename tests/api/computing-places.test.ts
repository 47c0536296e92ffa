import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest';
import { ComputeThread } from '../../apps/api/src/platform/compute/compute-thread.js';
import { startService, type TestService } from './support/service.js';
import { foundTeam, join, SETUP, type Stored, type TestTeam } from './support/team.js';
import { planBody, twoSetups } from './support/test-plan.js';

const CONNECTIONS = 4;
const ASKED_AT_ONCE = 12;

let service: TestService;
let team: TestTeam;
let other: TestTeam;
/** Computations that have begun, and go on when they are told to. */
let begun: (() => void)[];
let isHeld: boolean;
beforeAll(async () => {
  service = await startService({ DATABASE_POOL_SIZE: String(CONNECTIONS) });
  const thread: Pick<ComputeThread, 'run'> = service.app.get(ComputeThread);
  const compute = thread.run.bind(thread);
  thread.run = async (computation, input) => {
    if (isHeld) await new Promise<void>((resolve) => begun.push(resolve));
    return compute(computation, input);
  };
  [team, other] = [await foundTeam(service), await foundTeam(service, 'Team 2')];
});
beforeEach(() => {
  begun = [];
  isHeld = true;
});
afterAll(() => service.stop());

/** Lets everything that is asked for be computed. */
const goOn = () => {
  isHeld = false;
  for (const resolve of begun.splice(0)) resolve();
};
/** A new track of a team, for which nothing was computed yet. */
async function newTrack(name: string, of = team): Promise<string> {
  const { body } = await of.mechanic.post(`${of.path}/tracks`, { name, altitudeM: 100 }).expect(201);
  return (body as Stored).id;
}
const othersAreServed = async () => {
  for (const path of ['/bikes', '/tracks', '/runs'])
    await other.mechanic.get(`${other.path}${path}`).expect(200);
  await other.mechanic.post(`${other.path}/setups`, { ...SETUP, bikeId: other.bike.id }).expect(201);
};

it('computations of one team, however many are asked for, leave connections to others meanwhile', async () => {
  const tracks: string[] = [];
  for (let i = 0; i < ASKED_AT_ONCE; i += 1) tracks.push(await newTrack(`Track ${i}`));
  const asked = tracks.map((id) =>
    team.mechanic.get(`${team.path}/baselines?trackId=${id}`).then((answer) => answer),
  );
  await expect.poll(() => begun.length).toBeGreaterThan(0);
  await othersAreServed();
  goOn();
  for (const { status, body } of await Promise.all(asked)) {
    expect(status).toBe(200);
    expect((body as { items: unknown[] }).items).toHaveLength(1);
  }
});

it('so do plans that are made, each once though it was begun twice', async () => {
  const setups = await twoSetups(team);
  const asked = Array.from({ length: ASKED_AT_ONCE }, (_, i) =>
    team.mechanic
      .post(`${team.path}/test-plans`, { ...planBody(team, setups), name: `Plan ${i}` })
      .set('idempotency-key', `plan ${i}`)
      .then((answer) => answer),
  );
  await expect.poll(() => begun.length).toBeGreaterThan(0);
  await othersAreServed();
  goOn();
  const answers = await Promise.all(asked);
  expect(answers.map(({ body, status }) => (status === 201 ? 201 : body))).toEqual(answers.map(() => 201));
  const { body } = await team.mechanic.get(`${team.path}/test-plans?limit=100`).expect(200);
  expect((body as { items: unknown[] }).items).toHaveLength(ASKED_AT_ONCE);
});

it('what waited for a place is not answered to who has left the team meanwhile', async () => {
  const coach = await join(service, other, { role: 'coach' });
  const tracks: string[] = [];
  for (let i = 0; i < ASKED_AT_ONCE; i += 1) tracks.push(await newTrack(`Track ${i} of the other`, other));
  const asked = tracks.map((id) =>
    coach.get(`${other.path}/baselines?trackId=${id}`).then((answer) => answer),
  );
  await expect.poll(() => begun.length).toBeGreaterThan(0);
  // All the others have found out by then that they need a place.
  await sleep(1_000);
  const { body } = await other.mechanic.get(`${other.path}/members`).expect(200);
  const place = (body as Stored[]).at(-1);
  await other.mechanic.delete(`${other.path}/members/${place?.id}`).expect(204);
  goOn();
  const statuses = (await Promise.all(asked)).map(({ status }) => status);
  const served = statuses.filter((status) => status === 200);
  expect(served.length).toBeLessThanOrEqual(CONNECTIONS / 2);
  expect(new Set(statuses.filter((status) => status !== 200))).toEqual(new Set([404]));
});
