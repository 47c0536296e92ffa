import { Client } from 'pg';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { startService, type TestService } from './support/service.js';
import { BIKE, foundTeam, SETUP, type Stored, type TestTeam } from './support/team.js';
import { planBody, twoSetups } from './support/test-plan.js';

let service: TestService;
let team: TestTeam;
beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.stop());
beforeEach(async () => {
  team = await foundTeam(service);
});

interface End {
  readonly readings: number;
  readonly atLeast: number;
  readonly medianTravelMm: number | null;
  readonly mostTravelMm: number | null;
  readonly standardErrors: number | null;
  readonly bottomOutRuns: number;
  readonly bottomedRuns: number;
  readonly verdict: string;
  readonly sentence: string;
}
interface Decision extends Stored {
  readonly toSetupId: string;
  readonly outcome: string | null;
  readonly changesInWords: string;
  readonly expected: {
    fork: { sagPct: number; medianTravelMm: number; riskPct: number; hit: object };
  } | null;
  readonly observed: { runs: number; voided: number; fork: End | null; shock: End | null };
}

const create = async (things: string, body: object) =>
  (await team.mechanic.post(`${team.path}/${things}`, body).expect(201)).body as Stored;
const setUp = (change: object = {}) => create('setups', { ...SETUP, bikeId: team.bike.id, ...change });
const logOn = (change: object) =>
  create('runs', { bikeId: team.bike.id, trackId: team.track.id, day: '2026-05-09', ...change });
/** A change at the workbench: what is expected of it is computed and frozen. */
const changeFrom = (setupId: string, change: object = {}) =>
  create('changes', {
    bikeId: team.bike.id,
    setupId,
    trackId: team.track.id,
    fork: { pressurePsi: 65, spacers: 2, reboundClicks: 7 },
    shock: SETUP.shock,
    reason: 'Keep more in reserve.',
    ...change,
  });
const list = async (query = '', member = team.mechanic) =>
  ((await member.get(`${team.path}/decisions?limit=500${query}`).expect(200)).body as { items: Decision[] })
    .items;
const newest = async () => (await list())[0] as Decision;
const close = ({ id, version }: Stored, outcome = 'kept', note = 'Held up well.') =>
  team.mechanic.put(`${team.path}/decisions/${id}/outcome`, { outcome, note }, version);

/** Six runs on the first set-up, then a change with an expectation of its own. */
async function changed(): Promise<Decision> {
  const first = await setUp();
  for (const travelUsedMm of [128, 134, 131, 140, 126, 137]) await logOn({ fork: { travelUsedMm } });
  await changeFrom(first.id);
  return newest();
}

describe('a decision record', () => {
  it('tells the difference between the two set-ups in fields and in words, for whom, by whom, on what', async () => {
    const decision = await changed();
    expect(decision).toMatchObject({
      riderId: team.rider.id,
      changes: [
        { end: 'fork', figure: 'spacers', from: 1, to: 2, inWords: '1 → 2 spacers' },
        { end: 'fork', figure: 'reboundClicks', from: 8, to: 7, inWords: 'rebound 8 → 7 clicks' },
      ],
      changesInWords: 'fork: 1 → 2 spacers, rebound 8 → 7 clicks',
      decidedByName: 'Person',
      evidenceRuns: 6,
      testPlanId: null,
    });
    expect((await list()).at(-1)).toMatchObject({ changes: [], changesInWords: 'first set-up' });
  });

  it('names the test plan it rests on, if that tries set-ups of this bike', async () => {
    const plan = await create('test-plans', planBody(team, await twoSetups(team)));
    await setUp({ testPlanId: plan.id });
    expect(await newest()).toMatchObject({ testPlanId: plan.id });
    const other = await foundTeam(service, 'Team 2');
    const foreign = await other.mechanic.post(
      `${other.path}/test-plans`,
      planBody(other, await twoSetups(other)),
    );
    const body = { ...SETUP, bikeId: team.bike.id, testPlanId: (foreign.body as Stored).id };
    const refused = await team.mechanic.post(`${team.path}/setups`, body).expect(422);
    expect((refused.body as { code: string }).code).toBe('decision.no-plan');
  });

  it('holds the runs since against what was expected, and counts no others', async () => {
    const { expected } = await changed();
    expect(await newest()).toMatchObject({
      observed: { runs: 0, fork: { readings: 0, verdict: 'cannot tell' } },
    });
    const near = Math.round(expected?.fork.medianTravelMm ?? NaN);
    for (const travelUsedMm of [near - 3, near, near + 3])
      await logOn({ fork: { travelUsedMm, bottomOuts: 0 } });
    // Neither another track nor another set-up says anything about it.
    const track = await create('tracks', { name: 'Elsewhere', altitudeM: 900 });
    await logOn({ trackId: track.id, fork: { travelUsedMm: 170 } });
    const [before] = (
      (await team.mechanic.get(`${team.path}/setups`)).body as { items: Stored[] }
    ).items.slice(-1);
    await logOn({ setupId: before?.id, fork: { travelUsedMm: 170 } });
    // A spoilt run whose ring reading counts says something about hits; one whose does not says nothing.
    await logOn({ fork: { travelUsedMm: near }, spoilt: { reason: 'Slid out.', readingsCount: true } });
    await logOn({ fork: { travelUsedMm: 170 }, spoilt: { reason: 'Crashed.' } });
    const { observed } = await newest();
    expect(observed).toMatchObject({
      runs: 3,
      voided: 2,
      fork: { readings: 4, bottomOutRuns: 4, bottomedRuns: 0 },
    });
    expect(observed.fork?.medianTravelMm).toBeCloseTo(near, 6);
    expect(observed.fork?.mostTravelMm).toBeCloseTo(near + 3, 6);
    expect(Math.abs(observed.fork?.standardErrors ?? NaN)).toBeLessThan(1);
    expect(observed.fork).toMatchObject({
      verdict: 'as expected',
      sentence: expect.stringMatching(
        /^4 runs: travel as expected \(\d\.\d standard errors( more| less)?\)\.$/,
      ) as string,
    });
  });

  it('says that more travel is used than expected, and counts bottom-outs by the ring and by feel', async () => {
    await changed();
    for (const travelUsedMm of [160, 165, 163, 162]) await logOn({ fork: { travelUsedMm } });
    await logOn({ fork: { travelUsedMm: 170 } });
    await logOn({ fork: { bottomOuts: 2 } });
    const { fork } = (await newest()).observed;
    expect(fork).toMatchObject({
      readings: 5,
      atLeast: 1,
      bottomOutRuns: 6,
      bottomedRuns: 2,
      verdict: 'more travel',
    });
    expect(fork?.standardErrors).toBeGreaterThan(2);
    expect(fork?.sentence).toMatch(/^5 runs: uses more travel than expected: \d+\.\d standard errors\./);
  });

  it('keeps what was observed when its outcome was entered: later runs change nothing', async () => {
    const decision = await changed();
    await logOn({ fork: { travelUsedMm: 130 } });
    const { body } = await close(decision).expect(200);
    const { observed } = body as Decision;
    expect(observed.runs).toBe(1);
    await logOn({ fork: { travelUsedMm: 170 } });
    expect(await newest()).toMatchObject({ outcome: 'kept', outcomeNote: 'Held up well.', observed });
  });

  it('without anything expected shows the runs, and judges nothing', async () => {
    await setUp();
    await logOn({ fork: { travelUsedMm: 130 } });
    const { expected, observed } = await newest();
    expect(expected).toBeNull();
    expect(observed.fork).toMatchObject({ readings: 1, standardErrors: null, verdict: 'cannot tell' });
  });

  it('of a set-up entered for a track expects what the workbench expects of the same fill there', async () => {
    const { toSetupId } = await changed();
    const fork = { pressurePsi: 67, spacers: 2, reboundClicks: 7 };
    const { id } = await setUp({ trackId: team.track.id, fork });
    const entered = await newest();
    expect(entered).toMatchObject({ fromSetupId: toSetupId, toSetupId: id, evidenceRuns: 6 });
    expect(entered.expected?.fork.riskPct).toEqual(expect.any(Number));
    await changeFrom(id, { fork });
    expect((await newest()).expected).toEqual(entered.expected);
  });

  it('of a set-up pumped in the warm expects more sag at a cooler track than of one pumped there', async () => {
    await changed();
    await setUp({ trackId: team.track.id });
    const there = (await newest()).expected;
    await setUp({ trackId: team.track.id, filledAltitudeM: 0, filledTemperatureC: 40 });
    const inTheWarm = (await newest()).expected;
    expect(inTheWarm?.fork.sagPct).toBeGreaterThan(there?.fork.sagPct ?? NaN);
    expect(inTheWarm?.fork.riskPct).toBeGreaterThan(there?.fork.riskPct ?? NaN);
  });

  it('of a set-up for a track of another team is refused, and nothing is stored', async () => {
    const other = await foundTeam(service, 'Team 2');
    await setUp();
    const before = await list();
    const foreign = { ...SETUP, bikeId: team.bike.id, trackId: other.track.id };
    await team.mechanic.post(`${team.path}/setups`, foreign).expect(404);
    expect(await list()).toEqual(before);
  });

  it('taken back says so, with what was observed until then', async () => {
    const decision = await changed();
    await logOn({ fork: { travelUsedMm: 165 } });
    const before = (decision as unknown as { fromSetupId: string }).fromSetupId;
    await team.mechanic.post(`${team.path}/setups/${before}/restore`, { reason: 'Too harsh.' }).expect(201);
    const [back, taken] = await list();
    expect(taken).toMatchObject({ id: decision.id, outcome: 'taken back', observed: { runs: 1 } });
    expect(back).toMatchObject({
      outcome: null,
      changesInWords: 'fork: 2 → 1 spacers, rebound 7 → 8 clicks',
      // What was tried here is taken back here, and something is expected of it here.
      trackId: team.track.id,
      expected: { fork: { riskPct: expect.any(Number) as number } },
    });
  });

  it('gets one outcome, whoever enters it at the same moment', async () => {
    const decision = await changed();
    const answers = await Promise.all([
      close(decision),
      close(decision, 'superseded'),
      close(decision),
      changeFrom(decision.toSetupId, { fork: { pressurePsi: 66, spacers: 2 } }).then(() => ({ status: 201 })),
    ]);
    const entered = answers.filter(({ status }) => status === 200);
    expect(entered.length).toBeLessThanOrEqual(1);
    expect(answers.map(({ status }) => status).filter((status) => ![200, 201, 409].includes(status))).toEqual(
      [],
    );
    const closed = (await list()).find(({ id }) => id === decision.id);
    expect(closed).toMatchObject({ version: 2 });
    const expected = entered[0]
      ? (entered as { body?: { outcome: string } }[])[0]?.body?.outcome
      : 'superseded';
    expect(closed?.outcome).toBe(expected);
  });

  it('is never edited: no route takes anything but an outcome, and that once', async () => {
    const decision = await changed();
    const path = `${team.path}/decisions/${decision.id}`;
    for (const method of ['put', 'patch', 'delete'] as const)
      await team.mechanic.send(method, path).expect(404);
    await close(decision).expect(200);
    const refused = await close({ ...decision, version: 2 }, 'superseded').expect(409);
    expect((refused.body as { code: string }).code).toBe('decision.closed');
  });
});

describe('the timeline', () => {
  let otherBike: Stored;
  let otherRider: Stored;
  beforeEach(async () => {
    otherRider = await create('riders', { name: 'Rider B', readyMassKg: 70 });
    const parts = { riderId: otherRider.id, forkUnitId: team.fork.id, shockUnitId: team.shock.id };
    otherBike = await create('bikes', { ...BIKE, ...parts, name: 'Bike 2' });
    await setUp({ bikeId: otherBike.id });
    await setUp({ bikeId: otherBike.id, trackId: team.track.id, reason: '=1+1' });
    await setUp({ trackId: team.track.id });
    await setUp();
  });

  it.each([
    ['bike', () => `&bikeId=${otherBike.id}`, 2],
    ['rider', () => `&riderId=${otherRider.id}`, 2],
    ['track', () => `&trackId=${team.track.id}`, 2],
    ['bike and track', () => `&bikeId=${otherBike.id}&trackId=${team.track.id}`, 1],
    ['outcome', () => '&outcome=superseded', 2],
    ['what is open', () => '&outcome=open', 2],
  ])('is filtered by %s', async (_, query, count) => {
    expect(await list(query())).toHaveLength(count);
  });

  it('pages without gaps or doubles, newest first, under a filter too', async () => {
    const ids: string[] = [];
    for (let cursor: string | null = ''; cursor !== null;) {
      const path: string = `${team.path}/decisions?limit=1&riderId=${otherRider.id}${cursor && `&cursor=${cursor}`}`;
      const page = (await team.mechanic.get(path).expect(200)).body as {
        items: Decision[];
        nextCursor: string | null;
      };
      ids.push(...page.items.map(({ id }) => id));
      cursor = page.nextCursor;
    }
    expect(ids).toEqual((await list(`&riderId=${otherRider.id}`)).map(({ id }) => id));
  });

  it('refuses an outcome that there is not', async () => {
    await team.mechanic.get(`${team.path}/decisions?outcome=lost`).expect(422);
  });

  it('shows a rider their own only, and nothing of a bike that is not theirs', async () => {
    expect(await list('', team.riderMember)).toHaveLength(2);
    expect(await list(`&riderId=${otherRider.id}`, team.riderMember)).toEqual([]);
    await team.riderMember.get(`${team.path}/decisions?bikeId=${otherBike.id}`).expect(404);
    const { body } = await team.riderMember.get(`${team.path}/decisions/export/json`).expect(200);
    expect(body).toHaveLength(2);
  });

  it('is exported as CSV with texts that no spreadsheet computes, and whole as JSON', async () => {
    const { text, headers } = await team.mechanic
      .get(`${team.path}/decisions/export?bikeId=${otherBike.id}`)
      .expect(200);
    expect(headers).toMatchObject({ 'content-type': 'text/csv; charset=utf-8' });
    expect(headers['content-disposition']).toContain('decisions.csv');
    const [header, first, second, end] = text.split('\r\n');
    expect(header).toMatch(/^decided_at,bike,rider,track,change,reason,/);
    expect(first).toContain('Bike 2,Rider B,,first set-up,First ride.');
    expect(second).toContain(",'=1+1,");
    expect(end).toBe('');
    const { body } = await team.mechanic.get(`${team.path}/decisions/export/json?outcome=open`).expect(200);
    const open = (body as Decision[]).map(({ id }) => id);
    expect(open).toEqual((await list('&outcome=open')).map(({ id }) => id).reverse());
  });
});

describe('a decision from before riders and observations were kept with it', () => {
  it('keeps its figures, and is shown with what the runs say now', async () => {
    const decision = await changed();
    const owner = new Client({ connectionString: service.database.ownerUrl });
    await owner.connect();
    await owner.query(
      `update decision set expected = expected #- '{fork,hit}', outcome = 'kept' where id = $1`,
      [decision.id],
    );
    await owner.end();
    await logOn({ fork: { travelUsedMm: 140 } });
    const { expected, observed } = await newest();
    expect(expected?.fork).toMatchObject({
      hit: null,
      medianTravelMm: decision.expected?.fork.medianTravelMm,
    });
    expect(observed.fork).toMatchObject({ readings: 1, standardErrors: null });
  });
});
