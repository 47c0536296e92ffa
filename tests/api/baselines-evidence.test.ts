import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { startService, type TestService } from './support/service.js';
import { BIKE, FORK, foundTeam, SETUP, type Stored, type TestTeam } from './support/team.js';
import { planBody, type PlanStep, type TestPlan } from './support/test-plan.js';

interface Fill {
  readonly pressurePsi: number;
  readonly spacers: number;
  readonly sagPct: number;
  readonly riskPct: number;
  readonly brakingTravelMm: number;
  readonly earlyForceN: number;
}
interface Interval {
  readonly lowM: number;
  readonly highM: number;
}
interface End {
  readonly status: string;
  readonly message: string;
  readonly strokeMm: number;
  readonly wanted: {
    readonly reserveMm: number;
    readonly reserveSource: string;
    readonly reserveMessage: string;
    readonly brakingTravelMm: number | null;
  };
  readonly current: Fill;
  readonly recommended: Fill | null;
  readonly alternatives: readonly {
    readonly kind: string;
    readonly fill: Fill;
    readonly cost: { readonly riskPct: number; readonly sagPct: number; readonly brakingTravelMm: number };
  }[];
  readonly clicks: { readonly from: string; readonly setupId: string; readonly reboundClicks: number } | null;
  readonly time: readonly {
    readonly sentence: string;
    readonly gainPct: number;
    readonly gainLowPct: number;
    readonly gainHighPct: number;
    readonly faster: Fill;
    readonly towards: Fill | null;
  }[];
  readonly sharpen: Interval & {
    readonly sentence: string;
    readonly options: readonly (Interval & { readonly kind: string })[];
  };
}
interface Baseline {
  readonly id: string;
  readonly bikeId: string;
  readonly fork: End;
  readonly shock: End;
}

let service: TestService;
let team: TestTeam;

beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.stop());
beforeEach(async () => {
  team = await foundTeam(service);
});

const read = async (of = team, bikeId = of.bike.id): Promise<Baseline> => {
  const path = `${of.path}/baselines?trackId=${of.track.id}&bikeId=${bikeId}`;
  return ((await of.mechanic.get(path).expect(200)).body as { items: Baseline[] }).items[0] as Baseline;
};
const setUp = async (changes: object = {}, of = team): Promise<Stored> => {
  const body = { ...SETUP, bikeId: of.bike.id, trackId: of.track.id, ...changes };
  return (await of.mechanic.post(`${of.path}/setups`, body).expect(201)).body as Stored;
};
/** Sets up, rides softly and keeps it, so many times. */
const keep = async (count: number, of = team, changes: object = {}): Promise<void> => {
  for (let i = 0; i < count; i += 1) {
    await setUp(changes, of);
    const { items } = (await of.mechanic.get(`${of.path}/decisions`)).body as { items: Stored[] };
    const path = `${of.path}/decisions/${items[0]?.id}/outcome`;
    await of.coach.put(path, { outcome: 'kept' }, 1).expect(200);
  }
};
const ride = async (travelLeftMm: number, of = team): Promise<void> => {
  const run = { bikeId: of.bike.id, trackId: of.track.id, day: '2026-05-09', fork: { travelLeftMm } };
  await of.mechanic.post(`${of.path}/runs`, run).expect(201);
};
/** Hits that this fork takes with much travel to spare. */
const rideSoftly = async (of = team): Promise<void> => {
  for (const left of [60, 64, 62, 66, 61]) await ride(left, of);
};

describe('what was kept', () => {
  it('moves the wanted reserve from the usual wish towards what the kept set-ups leave, further with every one', async () => {
    await setUp();
    await rideSoftly();
    const before = (await read()).fork.wanted;
    expect(before).toMatchObject({ reserveSource: 'usual' });
    // 6 % of the stroke.
    expect(before.reserveMm).toBeCloseTo(0.06 * 170, 6);
    await keep(1);
    const once = (await read()).fork.wanted;
    await keep(3);
    const often = (await read()).fork.wanted;
    expect(once.reserveMm).toBeGreaterThan(before.reserveMm);
    expect(often.reserveMm).toBeGreaterThan(once.reserveMm);
    expect(often.reserveMessage).toBe('Learned from what this rider has kept: 4 decisions.');
  });

  it('of the team counts for a rider who has kept nothing, and not for one who has entered a wish', async () => {
    await setUp();
    await rideSoftly();
    await keep(4);
    const bikeOf = async (rider: object): Promise<string> => {
      const { id: riderId } = (await team.mechanic.post(`${team.path}/riders`, rider).expect(201))
        .body as Stored;
      const parts = { riderId, forkUnitId: team.fork.id, shockUnitId: team.shock.id };
      const bike = await team.mechanic.post(`${team.path}/bikes`, {
        ...BIKE,
        name: `Bike of ${riderId}`,
        ...parts,
      });
      return (bike.body as Stored).id;
    };
    const plain = (await read(team, await bikeOf({ name: 'Rider B', readyMassKg: 80 }))).fork.wanted;
    expect(plain).toMatchObject({ reserveMessage: 'Learned from what the team has kept: 4 decisions.' });
    expect(plain.reserveMm).toBeGreaterThan(0.06 * 170);
    const fork = { sagLowPct: 15, sagHighPct: 20, reservePct: 8 };
    const own = (await read(team, await bikeOf({ name: 'Rider C', readyMassKg: 80, fork }))).fork.wanted;
    expect(own).toMatchObject({ reserveSource: 'entered' });
    expect(own.reserveMm).toBeCloseTo(0.08 * 170, 6);
  });

  it('by another team never counts', async () => {
    await setUp();
    const before = await read();
    const other = await foundTeam(service, 'Team 2');
    await setUp({}, other);
    await rideSoftly(other);
    await keep(4, other);
    expect((await read(other)).fork.wanted.reserveSource).toBe('this rider');
    const after = await read();
    expect(after.id).toBe(before.id);
    expect(after.fork.wanted.reserveSource).toBe('usual');
  });

  it('gives the clicks to start from, and the next set-up them when the baseline is taken', async () => {
    await setUp();
    await rideSoftly();
    expect((await read()).fork.clicks).toMatchObject({ from: 'now', reboundClicks: 8 });
    await keep(1, team, { fork: { pressurePsi: 70, spacers: 0, reboundClicks: 11 } });
    await setUp({ fork: { pressurePsi: 95, spacers: 3, reboundClicks: 2 } });
    const baseline = await read();
    expect(baseline.fork.clicks).toMatchObject({ from: 'kept', reboundClicks: 11 });
    const taken = await team.mechanic.post(`${team.path}/baselines/${baseline.id}/take`, { wholeWay: true });
    expect(taken.body).toMatchObject({ fork: { reboundClicks: 11 } });
  });

  it('allows the dive under braking that the kept set-ups had', async () => {
    await setUp();
    await rideSoftly();
    expect((await read()).fork.wanted.brakingTravelMm).toBeNull();
    await keep(1);
    const { fork, shock } = await read();
    // The set-up in the bike is the kept one; 2 % of the stroke nobody tells apart.
    expect(fork.wanted.brakingTravelMm).toBeCloseTo(fork.current.brakingTravelMm + 0.02 * 170, 6);
    expect(shock.current.brakingTravelMm).toBeNull();
  });
});

describe('an answer', () => {
  it('on a track of soft hits recommends a set-up within the sag wanted and the risk accepted', async () => {
    await setUp();
    await rideSoftly();
    const { fork } = await read();
    expect(fork).toMatchObject({ status: 'recommended' });
    expect(fork.recommended?.sagPct).toBeGreaterThanOrEqual(15);
    expect(fork.recommended?.sagPct).toBeLessThanOrEqual(20);
    expect(fork.recommended?.riskPct).toBeLessThanOrEqual(5);
  });

  it('tells of every alternative what it costs, and names none outside the limits', async () => {
    await setUp();
    await rideSoftly();
    const { fork } = await read();
    expect(fork.alternatives.length).toBeGreaterThan(1);
    for (const { fill, cost } of fork.alternatives) {
      expect(fill.pressurePsi).toBeGreaterThanOrEqual(FORK.minPressurePsi);
      expect(fill.pressurePsi).toBeLessThanOrEqual(FORK.maxPressurePsi);
      expect(fill.spacers).toBeLessThanOrEqual(FORK.maxSpacers);
      expect(cost.riskPct).toBeCloseTo(fill.riskPct - (fork.recommended?.riskPct ?? 0), 6);
      expect(cost.sagPct).toBeCloseTo(fill.sagPct - (fork.recommended?.sagPct ?? 0), 6);
      const dive = fill.brakingTravelMm - (fork.recommended?.brakingTravelMm ?? 0);
      expect(cost.brakingTravelMm).toBeCloseTo(dive, 6);
    }
  });

  it('for a unit without its limits is a forecast and no recommendation', async () => {
    const open = { ...FORK, name: 'Fork 2', maxPressurePsi: null };
    const fork = (await team.mechanic.post(`${team.path}/spring-units`, open).expect(201)).body as Stored;
    const parts = { riderId: team.rider.id, forkUnitId: fork.id, shockUnitId: team.shock.id };
    const { body } = await team.mechanic.post(`${team.path}/bikes`, { ...BIKE, name: 'Bike 2', ...parts });
    const baseline = await read(team, (body as Stored).id);
    expect(baseline.fork).toMatchObject({
      status: 'no limits',
      recommended: null,
      alternatives: [],
      clicks: null,
    });
    expect(baseline.shock.status).not.toBe('no limits');
  });

  it('says what two more runs would tell: less is left open, and most by this rider here', async () => {
    await setUp();
    await rideSoftly();
    const { sharpen } = (await read()).fork;
    const width = ({ lowM, highM }: Interval) => highM / lowM;
    expect(sharpen.options[0]?.kind).toBe('this rider here');
    for (const option of sharpen.options) expect(width(option)).toBeLessThanOrEqual(width(sharpen));
    // Little is left open after so many runs, and then the sentence says how little instead of two ranges alike.
    expect(sharpen.sentence).toMatch(
      /^Two runs by this rider here would narrow the 95 % hit(?: from |, .* m, by less than )/,
    );
  });
});

describe('evidence on time', () => {
  /** Closes a plan of two set-ups of the fork, the second `sharePct` slower; gives the baseline before it was closed. */
  const plan = async (sharePct: number): Promise<Baseline> => {
    const before = await setUp();
    const after = await setUp({ fork: { ...SETUP.fork, spacers: 2 } });
    const plans = `${team.path}/test-plans`;
    const body = planBody(team, { before, after });
    const made = (await team.mechanic.post(plans, body).expect(201)).body as TestPlan;
    const changed = made.arms.find(({ current }) => current === false)?.letter;
    for (const [i, scatter] of [0.1, -0.2, 0.2, -0.1, -0.2, 0.2, 0.1, -0.1].entries()) {
      const [place] = (await team.riderMember.get(`${plans}/${made.id}/progress`)).body as PlanStep[];
      const share = (place?.next?.letter === changed ? sharePct : 0) + scatter + 0.3 * i;
      const run = { timeS: 180 * (1 + share / 100), fork: { travelLeftMm: 60 + i } };
      await team.riderMember.post(`${plans}/${made.id}/runs`, run).expect(201);
    }
    const open = await read();
    expect(open.fork.time).toEqual([]);
    const { version } = (await team.mechanic.get(`${plans}/${made.id}`)).body as Stored;
    await team.mechanic.put(`${plans}/${made.id}/closing`, {}, version).expect(200);
    return open;
  };

  it('is a line of its own with the difference and its interval, and leaves the recommendation as it is', async () => {
    const open = await plan(-3);
    const { id, fork, shock } = await read();
    expect(id).not.toBe(open.id);
    expect(fork.recommended).toEqual(open.fork.recommended);
    const [line] = fork.time;
    expect(line?.faster).toMatchObject({ spacers: 2 });
    expect(line?.gainLowPct).toBeGreaterThan(0);
    expect(line?.gainLowPct).toBeLessThan(3);
    expect(line?.gainHighPct).toBeGreaterThan(3);
    expect(line?.sentence).toContain('65 psi with 2 spacers was');
    expect(line?.towards?.riskPct).toBeLessThanOrEqual(5);
    // The plan changed nothing at the shock.
    expect(shock.time).toEqual([]);
  });

  it('names the other set-up where the change was slower', async () => {
    await plan(3);
    const [line] = (await read()).fork.time;
    expect(line?.faster).toMatchObject({ spacers: 1 });
    expect(line?.gainPct).toBeGreaterThan(1);
  });

  it('is silent where the plan told nothing apart', async () => {
    await plan(0);
    expect((await read()).fork.time).toEqual([]);
  });
});
