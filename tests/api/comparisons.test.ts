import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { startService, type TestService } from './support/service.js';
import { foundTeam, type Stored, type TestTeam } from './support/team.js';
import { planBody, twoSetups, type PlanStep, type TestPlan } from './support/test-plan.js';

interface Arm extends Stored {
  readonly letter: string;
  readonly name: string;
  readonly verdict: string;
  readonly sentence: string;
  readonly differencePct: number;
  readonly lowPct: number;
  readonly highPct: number;
  readonly needed: { forDifference: number | null } | null;
  readonly feel: readonly {
    aspect: string;
    status: string;
    median: number | null;
    superiority: number | null;
    p: number | null;
    pAmong: number | null;
    sentence: string;
  }[];
}
interface Comparison {
  readonly look: number | null;
  readonly errorRatePct: number;
  readonly feelComparisons: number;
  readonly feelErrorRatePct: number;
  readonly status: string;
  readonly sentences: readonly string[];
  readonly counts: { runs: number; voided: number; timed: number };
  readonly current: { name: string };
  readonly arms: readonly Arm[];
  readonly trendOverSessionPct: number | null;
  readonly points: readonly {
    runId: string;
    position: number;
    timeS: number | null;
    fittedS: number | null;
    trendS: number | null;
  }[];
}

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
  (await team.mechanic.post(plans, { ...planBody(team, setups), ...changes }).expect(201)).body as TestPlan;
/** Scatter of 0.2 % between runs, the same for every test. */
const SCATTER = [0.1, -0.2, 0.2, -0.1, -0.2, 0.2, 0.1, -0.1];

/** Rides what is left of a plan, or `count` runs of it, in times of 180 s and `sharePct` more with the second arm. */
async function ride(
  plan: TestPlan,
  sharePct: number,
  count = plan.runs.length,
  aspects: readonly string[] = ['support'],
): Promise<PlanStep> {
  const changed = plan.arms.find(({ current }) => current === false)?.letter;
  let step: PlanStep | undefined;
  for (let i = 0; i < count; i += 1) {
    const [place] = (await team.riderMember.get(`${plans}/${plan.id}/progress`)).body as PlanStep[];
    const isChanged = place?.next?.letter === changed;
    const timeS = 180 * (1 + ((isChanged ? sharePct : 0) + (SCATTER[i] ?? 0) + 0.3 * i) / 100);
    const ratings = Object.fromEntries(aspects.map((aspect) => [aspect, isChanged ? 5 : 3]));
    const run = { timeS, ratings };
    step = (await team.riderMember.post(`${plans}/${plan.id}/runs`, run).expect(201)).body as PlanStep;
  }
  return step as PlanStep;
}
async function close(plan: TestPlan): Promise<void> {
  const { version } = (await team.mechanic.get(`${plans}/${plan.id}`)).body as Stored;
  await team.mechanic.put(`${plans}/${plan.id}/closing`, {}, version).expect(200);
}
const compare = async (plan: TestPlan, member = team.coach): Promise<Comparison> =>
  (await member.get(`${plans}/${plan.id}/comparison`).expect(200)).body as Comparison;

describe('the comparison of a plan', () => {
  it.each([
    [-3, 'faster'],
    [3, 'slower'],
    [0, 'no practical difference'],
  ])('of a change of %d %% of time says: %s', async (sharePct, verdict) => {
    const plan = await make();
    await ride(plan, sharePct);
    await close(plan);
    const comparison = await compare(plan);
    const [arm] = comparison.arms;
    expect(arm).toMatchObject({ name: 'One spacer more', verdict, needed: null });
    expect(comparison.current.name).toBe('As it is');
    expect(arm?.lowPct).toBeLessThan(sharePct);
    expect(arm?.highPct).toBeGreaterThan(sharePct);
    // A trend of 0.3 % a run over the seven steps between eight runs.
    expect(comparison.trendOverSessionPct).toBeGreaterThan(1.5);
    expect(comparison.trendOverSessionPct).toBeLessThan(2.7);
  });

  it('cannot tell yet where the scatter is as large as the change, and says how many runs it takes', async () => {
    const plan = await make({ marginPct: 0.2 });
    await ride(plan, 0.1);
    await close(plan);
    const [arm] = (await compare(plan)).arms;
    expect(arm?.verdict).toBe('cannot tell yet');
    expect(arm?.needed?.forDifference).toBeGreaterThan(0);
  });

  it('has a point for every run in the order ridden, with its trend, and feel beside time', async () => {
    const plan = await make();
    await ride(plan, 3);
    await close(plan);
    const { points, arms } = await compare(plan);
    expect(points.map(({ position }) => position)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    const trend = points.map(({ trendS }) => trendS ?? 0);
    expect(trend).toEqual(trend.toSorted((a, b) => a - b));
    for (const { timeS, fittedS } of points) expect(Math.abs((timeS ?? 0) - (fittedS ?? 0))).toBeLessThan(1);
    const support = arms[0]?.feel.find(({ aspect }) => aspect === 'support');
    expect(support).toMatchObject({ status: 'compared', median: 5, currentMedian: 3 });
    const comfort = arms[0]?.feel.find(({ aspect }) => aspect === 'comfort');
    expect(comfort).toMatchObject({ status: 'no ratings' });
  });

  it('of ratings shares one error rate over all that were rated, and says so', async () => {
    const plan = await make();
    await ride(plan, 0, plan.runs.length, ['support', 'comfort']);
    await close(plan);
    const { arms, feelComparisons, feelErrorRatePct } = await compare(plan);
    expect({ feelComparisons, feelErrorRatePct }).toEqual({ feelComparisons: 2, feelErrorRatePct: 5 });
    const rated = arms[0]?.feel.filter(({ p }) => p !== null) ?? [];
    expect(rated.map(({ aspect }) => aspect)).toEqual(['support', 'comfort']);
    for (const aspect of rated) {
      // Four against four, all apart: 2 of the 70 ways to share out eight ratings lie as far out.
      expect(aspect.p).toBeCloseTo(2 / 70, 9);
      expect(aspect.pAmong).toBeCloseTo(4 / 70, 9);
      expect(aspect).toMatchObject({ status: 'too few ratings', superiority: 1 });
      expect(aspect.sentence).toContain('among 2 comparisons of ratings');
    }
  });

  it('of one run an arm gives no verdict, and says why', async () => {
    const plan = await make({ runsAnArm: 1 });
    await ride(plan, -3);
    await close(plan);
    const [arm] = (await compare(plan)).arms;
    expect(arm?.verdict).toBe('no verdict');
    expect(arm?.sentence).toContain('One run a set-up');
  });

  it('of a plan all of whose runs are void says so, and shows them', async () => {
    const plan = await make({ runsAnArm: 1 });
    for (let i = 0; i < 2; i += 1) {
      const run = { timeS: 180, spoilt: { reason: 'Held up.' } };
      await team.riderMember.post(`${plans}/${plan.id}/runs`, run).expect(201);
    }
    await close(plan);
    const comparison = await compare(plan);
    expect(comparison).toMatchObject({
      status: 'nothing to compare',
      counts: { runs: 2, voided: 2, timed: 0 },
    });
    expect(comparison.sentences.join(' ')).toContain('Every run is void');
    expect(comparison.points).toHaveLength(2);
  });

  it('leaves a void run out of the times, and keeps its place', async () => {
    const plan = await make();
    const { runId } = await ride(plan, 3, 2);
    await team.riderMember.post(`${plans}/${plan.id}/void-runs`, { runId, reason: 'Fell.' }).expect(201);
    await ride(plan, 3, 7);
    await close(plan);
    const { counts, points } = await compare(plan);
    expect(counts).toMatchObject({ runs: 9, voided: 1, timed: 8 });
    expect(points.find((point) => point.runId === runId)).toMatchObject({ voided: true, fittedS: null });
    expect(points.map(({ position }) => position)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
  });
});

describe('looking at a plan', () => {
  it('at the end waits until it is closed', async () => {
    const plan = await make();
    await ride(plan, 0, 2);
    const { body } = await team.coach.get(`${plans}/${plan.id}/comparison`).expect(409);
    expect(body).toMatchObject({ code: 'comparison.not-yet' });
    await close(plan);
    expect(await compare(plan)).toMatchObject({ look: null, errorRatePct: 5 });
  });

  it('after every block spends the error rate, and shows nothing new between blocks', async () => {
    const plan = await make({ looks: 'after every block' });
    // The places at which each arm has been ridden once, and twice.
    const order = plan.runs.map(({ letter }) => letter);
    const wholeAfter = (runs: number) =>
      order.findIndex((_, i) =>
        ['A', 'B'].every((letter) => order.slice(0, i + 1).filter((own) => own === letter).length >= runs),
      ) + 1;
    await ride(plan, 0, wholeAfter(2));
    const second = await compare(plan);
    expect(second).toMatchObject({ look: 2, ofLooks: 4, counts: { runs: wholeAfter(2) } });
    // The second of four looks, at nine tenths of 5 %: the bound is 3.02 on a normal scale.
    expect(second.errorRatePct).toBeCloseTo(0.2498, 3);
    await ride(plan, 0, 1);
    const between = await compare(plan);
    const waits = wholeAfter(3) > wholeAfter(2) + 1;
    if (waits) {
      expect(between).toMatchObject({ look: 2, counts: second.counts });
      expect(between.sentences).toContain('1 run waits for the block to be whole.');
    } else {
      expect(between).toMatchObject({ look: 3 });
    }
  });

  it('is not for the riders of a blind plan before it is closed', async () => {
    const plan = await make({ blind: true, looks: 'after every block' });
    await ride(plan, 0, 4);
    const { body } = await team.riderMember.get(`${plans}/${plan.id}/comparison`).expect(409);
    expect(body).toMatchObject({ code: 'comparison.blind' });
    expect((await compare(plan)).look).toBeGreaterThanOrEqual(1);
    await close(plan);
    expect((await compare(plan, team.riderMember)).arms).toHaveLength(1);
  });

  it("is not for another team's people", async () => {
    const plan = await make();
    const other = await foundTeam(service, 'Team 2');
    await other.mechanic.get(`${other.path}/test-plans/${plan.id}/comparison`).expect(404);
    await other.mechanic.get(`${team.path}/test-plans/${plan.id}/comparison`).expect(404);
    const query = `bikeId=${team.bike.id}&trackId=${team.track.id}&currentSetupId=${setups.before.id}`;
    await other.mechanic.get(`${other.path}/comparisons?${query}`).expect(404);
  });
});

describe('the comparison of set-ups that were chosen afterwards', () => {
  it('compares what was ridden, and says that it was not planned', async () => {
    const plan = await make();
    await ride(plan, -3);
    const query = `bikeId=${team.bike.id}&trackId=${team.track.id}&currentSetupId=${setups.before.id}`;
    const { body } = await team.coach.get(`${team.path}/comparisons?${query}`).expect(200);
    expect(body).toMatchObject({
      planId: null,
      arms: [{ setupId: setups.after.id, letter: null, verdict: 'faster' }],
    });
    expect((body as Comparison).sentences.join(' ')).toContain('chosen after they were ridden');
  });

  it('of a bike nobody rode says that there are no runs', async () => {
    const query = `bikeId=${team.bike.id}&trackId=${team.track.id}&currentSetupId=${setups.before.id}&marginPct=2`;
    const { body } = await team.riderMember.get(`${team.path}/comparisons?${query}`).expect(200);
    expect(body).toMatchObject({ status: 'nothing to compare', marginPct: 2, arms: [], points: [] });
  });
});

describe('the history of the team', () => {
  it('moderates the scatter once eight sessions are timed', async () => {
    for (let day = 1; day <= 9; day += 1) {
      for (const part of SCATTER.slice(0, 6)) {
        const timeS = 180 * (1 + part / 100) + day + (day % 3) * part * 0.3;
        const run = { bikeId: team.bike.id, trackId: team.track.id, day: `2026-04-0${day}`, timeS };
        await team.mechanic.post(`${team.path}/runs`, run).expect(201);
      }
    }
    const plan = await make({ runsAnArm: 2 });
    expect(plan.statement.scatterPct).toBeGreaterThan(0);
    await ride(plan, -3);
    await close(plan);
    const comparison = await compare(plan);
    expect(comparison).toMatchObject({ scatter: { source: 'moderated by history' } });
    expect(comparison.arms[0]?.verdict).toBe('faster');
  });
});
