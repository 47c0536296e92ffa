import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Member, PASSWORD } from '../api/support/member.js';
import { foundTeam, SETUP, type Stored, type TestTeam } from '../api/support/team.js';
import { cannotShift, makeClock, type ShiftedClock } from './clock/shifted-clock.js';
import { isReady, kill, makeHouse, type House, waitUntil } from './house.js';

const HOUR_S = 3_600;
const DAY_S = 24 * HOUR_S;
const LIMIT_MS = 30_000;
const WRONG = 'another sentence';
/** Failures that are free, and the longest that one then waits after one more, in s. */
const FREE_TRIES = 5;
const NEXT_DELAY_S = 2;

describe.runIf(cannotShift === undefined)('a clock that jumps', () => {
  let house: House;
  let clock: ShiftedClock;
  let address: string;
  let team: TestTeam;
  beforeAll(async () => {
    clock = makeClock();
    house = await makeHouse();
    address = await house.start({ env: clock.env }).address();
    team = await foundTeam({ url: `${address}/api/v1` });
    await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: team.bike.id }).expect(201);
  });
  afterAll(async () => {
    await house.clear();
    clock.remove();
  });

  const person = (): Member => new Member({ url: `${address}/api/v1` });
  const signIn = (member: Member, password = PASSWORD) =>
    person().post('/sign-ins', { email: member.email, password });
  const track = (key: string) =>
    team.mechanic.post(`${team.path}/tracks`, { name: key, altitudeM: 1 }).set('idempotency-key', key);
  const change = (reason: string, pressurePsi: number) =>
    team.mechanic
      .post(`${team.path}/setups`, {
        ...SETUP,
        fork: { ...SETUP.fork, pressurePsi },
        bikeId: team.bike.id,
        reason,
      })
      .expect(201);
  const run = (note: string) =>
    team.mechanic
      .post(`${team.path}/runs`, {
        ...{ bikeId: team.bike.id, trackId: team.track.id, day: '2026-05-09' },
        ...{ fork: { travelLeftMm: 18 }, note },
      })
      .expect(201);
  /** What the service itself takes for the time, by the time of an answer. */
  const timeThere = async (): Promise<number> =>
    Date.parse((await fetch(`${address}/api/v1/health/live`)).headers.get('date') ?? '');
  const databaseTime = async (): Promise<number> => {
    const [row] = (await house.query('select now() as now')) as { now: Date }[];
    return row?.now.getTime() ?? 0;
  };
  /** Another process, whose ids begin by the clock as it is now. */
  const restartService = async () => {
    const pids = () => house.processes().filter(({ command }) => command.includes('service-entry'));
    const [before] = pids();
    kill(before?.pid ?? 0);
    await waitUntil(() => pids().some(({ pid }) => pid !== before?.pid), LIMIT_MS);
    await waitUntil(() => isReady(address), LIMIT_MS);
  };

  it.each([
    ['back an hour', -HOUR_S],
    ['forward a day', DAY_S],
    ['back two days', -DAY_S],
    ['to where it should be', 0],
  ])('%s breaks no sign-in, no write, no order and keeps nobody out', async (how, shiftS) => {
    const { body: first } = await track(how).expect(201);
    const failing = await person().signUp();
    for (let tries = 0; tries < FREE_TRIES; tries += 1) await signIn(failing, WRONG).expect(401);
    clock.set(shiftS);
    const expected = Date.now() + shiftS * 1e3;
    const isThere = (time: number) => Math.abs(time - expected) < 10_000;
    // Answers carry a date that is made anew once a second.
    await waitUntil(async () => isThere(await timeThere()), 5_000);
    expect(isThere(await timeThere())).toBe(true);
    expect(isThere(await databaseTime())).toBe(true);

    // Sign-ins go on; new ones begin and end.
    await team.mechanic.get('/accounts/current').expect(200);
    const fresh = await person().signUp();
    await fresh.get('/accounts/current').expect(200);
    // A delay after failures is no longer than it was.
    const waiting = await signIn(failing);
    if (waiting.status === 429) {
      expect(Number(waiting.headers['retry-after'])).toBeLessThanOrEqual(NEXT_DELAY_S);
      await sleep(Number(waiting.headers['retry-after']) * 1e3);
      await signIn(failing).expect(201);
    } else expect(waiting.status).toBe(201);
    // A repeated write is known again; another process makes ids that are none of those before.
    expect((await track(how).expect(201)).body).toEqual(first);
    await restartService();
    expect((await track(how).expect(201)).body).toEqual(first);
    await run(how);
    const before = await newest();
    await change(how, 60 + Math.abs(shiftS / DAY_S) + before.revision);
    const after = await newest();
    expect(after).toMatchObject({ revision: before.revision + 1, previousId: before.id });
    // Links that have a time have it from now on.
    const { body: invitation } = await team.mechanic
      .post(`${team.path}/invitations`, { role: 'coach' })
      .expect(201);
    const token = (invitation as { path: string }).path.replace('/join#', '');
    const newcomer = {
      email: `${how.replaceAll(' ', '-')}@team.example`,
      password: PASSWORD,
      displayName: 'Coach',
      token,
    };
    await person().post('/invitations/accept', newcomer).expect(201);
    // What is read is whole, page by page.
    const marks = (await pages('runs')).map(({ note }) => note);
    expect(marks.filter((mark) => mark === how)).toHaveLength(1);
    expect(new Set(await pages('audit').then((all) => all.map(({ id }) => id))).size).toBe(
      (await pages('audit')).length,
    );
  });

  const newest = async () => {
    const { body } = await team.mechanic
      .get(`${team.path}/setups?bikeId=${team.bike.id}&limit=500`)
      .expect(200);
    const { items } = body as { items: (Stored & { revision: number })[] };
    const [last] = items.toSorted((a, b) => b.revision - a.revision);
    if (!last) throw new Error('The bike has no set-up.');
    return last;
  };

  /** All of a list, read in pages of a few. */
  const pages = async (things: string): Promise<Stored[]> => {
    const all: Stored[] = [];
    for (let next: string | null = ''; next !== null;) {
      const cursor: string = next && `&cursor=${next}`;
      const { body } = await team.mechanic.get(`${team.path}/${things}?limit=2${cursor}`).expect(200);
      const page = body as { items: Stored[]; nextCursor: string | null };
      all.push(...page.items);
      next = page.nextCursor;
    }
    return all;
  };
});

it.runIf(cannotShift !== undefined)('cannot be tried here', ({ skip }) => {
  skip(`setting the clock of a house ${cannotShift ?? ''}`);
});
