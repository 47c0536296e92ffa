import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  answerTo,
  besideNothing,
  ID_PLACES,
  kindAt,
  words,
  type Caller,
  type Ids,
} from './support/id-places.js';
import { startService, type TestService } from './support/service.js';
import { digestOf, enterThings } from './support/team-things.js';
import { foundTeam, join, type Stored, type TestTeam } from './support/team.js';
import { planBody, type PlanStep } from './support/test-plan.js';
import { without } from './support/without.js';

/** Things that are the whole team's, as docs/access.md says: a rider reads them all. */
const OF_TEAM = ['tracks', 'trackId', 'sessions', 'sessionId', 'spring-units'];
/** Part of every name of the other rider's things: no answer may hold it. */
const MATE = 'Mate';

const PLACES = ID_PLACES.filter(({ callers }) => callers.includes('rider'));
const isOwned = (place: (typeof PLACES)[number]) => !OF_TEAM.includes(kindAt(place));

let service: TestService;
let team: TestTeam;
let caller: Caller;
let mates: Ids;
let matesRows: () => Promise<Record<string, string>>;
let before: Record<string, string>;

beforeAll(async () => {
  service = await startService();
  team = await foundTeam(service);
  const mate = await enterMate();
  const own = await enterThings(service, team);
  const theirs = await enterThings(service, mate);
  const shared = await enterSharedPlan(mate);
  const plan = ['test-plans', 'planId', 'testPlanId'].map((name): [string, string] => [name, shared.planId]);
  caller = {
    member: team.riderMember,
    teamId: team.id,
    // A change says which set-up it starts from: the one in the bike.
    own: new Map([...own, ...plan, ['runId', shared.ownRunId], ['setupId', await newestSetup(team)]]),
  };
  mates = new Map([...theirs, ['runId', shared.matesRunId]]);
  matesRows = () => digestOf(service, { rider_id: mate.rider.id, bike_id: mate.bike.id });
  before = await matesRows();
});
afterAll(() => service.stop());

/** A second rider with a bike and a sign-in of their own, seen as the rider of a team. */
async function enterMate(): Promise<TestTeam> {
  const { mechanic, path, fork, shock } = team;
  const create = async (things: string, body: object) =>
    (await mechanic.post(`${path}/${things}`, body).expect(201)).body as Stored;
  const rider = await create('riders', { name: `${MATE} B`, readyMassKg: 70 });
  const { body: like } = await mechanic.get(`${path}/bikes/${team.bike.id}`).expect(200);
  const parts = { riderId: rider.id, forkUnitId: fork.id, shockUnitId: shock.id };
  const bike = await create('bikes', {
    ...without(like as Stored, ['id', 'version']),
    ...parts,
    name: `${MATE} bike`,
  });
  const riderMember = await join(service, team, { role: 'rider', riderId: rider.id });
  return { ...team, rider, bike, riderMember };
}

/** The set-ups of the bike, newest first. */
async function setupsOf({ bike }: TestTeam): Promise<Stored[]> {
  const { body } = await team.mechanic.get(`${team.path}/setups?bikeId=${bike.id}`).expect(200);
  return (body as { items: Stored[] }).items;
}
const newestSetup = async (of: TestTeam): Promise<string> => (await setupsOf(of))[0]?.id ?? '';

/** A plan that both ride, with a run of each: the nearest that the two come to each other. */
async function enterSharedPlan(mate: TestTeam) {
  const { mechanic, path } = team;
  const [[before, after] = [], matesSetups = []] = [await setupsOf(team), await setupsOf(mate)];
  if (!before || !after) throw new Error('The bike needs two set-ups.');
  const arms = [before, after].map((setup, arm) => ({
    name: ['As it is', 'Otherwise'][arm],
    setups: [
      { bikeId: team.bike.id, setupId: setup.id },
      { bikeId: mate.bike.id, setupId: matesSetups[arm]?.id },
    ],
  }));
  const riders = [team, mate].map(({ rider, bike }) => ({ riderId: rider.id, bikeId: bike.id }));
  const plan = (
    await mechanic
      .post(`${path}/test-plans`, { ...planBody(team, { before, after }), riders, arms })
      .expect(201)
  ).body as Stored;
  const ride = async ({ rider }: TestTeam) => {
    const run = { riderId: rider.id, timeS: 180 };
    const { body } = await mechanic.post(`${path}/test-plans/${plan.id}/runs`, run).expect(201);
    return (body as PlanStep).runId;
  };
  return { planId: plan.id, ownRunId: await ride(team), matesRunId: await ride(mate) };
}

describe("a team mate's id, sent by a rider,", () => {
  const owned = PLACES.filter(isOwned);

  it('is tried in every place of every route that riders may call', () => {
    expect(owned.length).toBeGreaterThan(40);
    const unknown = PLACES.filter((place) => !mates.has(kindAt(place)));
    expect(unknown.map(({ route, where }) => `${route}: ${where}`)).toEqual([]);
    for (const place of owned) expect(mates.get(kindAt(place))).not.toBe(caller.own.get(kindAt(place)));
  });

  it.each(owned)('is answered as the id of nothing: $route, $where', async (place) => {
    const { nothing, found } = await besideNothing(caller, place, mates.get(kindAt(place)) ?? '');
    expect(found.text).not.toContain(MATE);
    expect(words(found)).toBe(words(nothing));
    expect(found.status).toBeLessThan(500);
  });

  it('has changed nothing of theirs', async () => {
    expect(Object.keys(before).length).toBeGreaterThan(5);
    expect(await matesRows()).toEqual(before);
  });

  it.each(owned)('is refused for being theirs, one of their own is not: $route, $where', async (place) => {
    const own = new Map([...caller.own, ['setupId', await newestSetup(team)]]);
    const { nothing, found } = await besideNothing({ ...caller, own }, place, own.get(kindAt(place)) ?? '');
    expect(words(found)).not.toBe(words(nothing));
    // What stands beside it may not fit any more: then that is what the answer is about.
    expect([200, 201, 409, 422]).toContain(found.status);
  });
});

describe("what is the whole team's", () => {
  const read = PLACES.filter(({ where, method }) => where.startsWith('path') && method === 'get');

  it.each(read.filter((place) => !isOwned(place)))('is read by every rider: $route', async (place) => {
    const { status, text } = await answerTo(caller, place, mates.get(kindAt(place)) ?? '');
    expect(status).toBe(200);
    expect(text).not.toContain(MATE);
  });
});
