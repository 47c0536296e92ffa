import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startService, type TestService } from './support/service.js';
import { foundTeam, SETUP, type Stored, type TestTeam } from './support/team.js';

interface Reading {
  readonly runId: string;
  readonly kind: string;
  readonly voided: boolean;
  readonly chance: number | null;
  readonly pull: number | null;
  readonly surprising: boolean;
}
interface Demand {
  readonly readings: readonly Reading[];
  readonly riderOnTrackSd: number;
  readonly riderOnTrackSdSource: string;
}

let service: TestService;
let team: TestTeam;

const ride = async (travelLeftMm: number): Promise<string> => {
  const run = { bikeId: team.bike.id, trackId: team.track.id, day: '2026-05-09', fork: { travelLeftMm } };
  const { body } = await team.mechanic.post(`${team.path}/runs`, run).expect(201);
  return (body as Stored).id;
};
const demand = async (end = 'fork'): Promise<Demand> =>
  (await team.mechanic.get(`${team.path}/tracks/${team.track.id}/demand?end=${end}`).expect(200))
    .body as Demand;
const reading = async (runId: string): Promise<Reading> =>
  (await demand()).readings.find((candidate) => candidate.runId === runId) as Reading;

let ordinary: string;
beforeAll(async () => {
  service = await startService();
  team = await foundTeam(service);
  await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: team.bike.id }).expect(201);
  ordinary = await ride(33);
  for (const left of [30, 35, 38, 32, 34, 36, 31, 37, 33, 34, 35]) await ride(left);
});
afterAll(() => service.stop());

describe('the readings of a track', () => {
  it('are as probable as they should be where all are alike, and move the level little', async () => {
    const { readings } = await demand();
    expect(readings).toHaveLength(12);
    for (const { chance, pull, surprising } of readings) {
      expect(chance).toBeGreaterThan(0.01);
      expect(chance).toBeLessThanOrEqual(1);
      // One of twelve alike: a few hundredths of a log metre.
      expect(Math.abs(pull as number)).toBeLessThan(0.1);
      expect(surprising).toBe(false);
    }
  });

  it('single out the one that was misread, and tell which way it moves the level', async () => {
    const slipped = await ride(95);
    const odd = await reading(slipped);
    expect(odd.chance).toBeLessThan(0.01);
    expect(odd.surprising).toBe(true);
    // Little travel used: it draws the level down, more than any other.
    expect(odd.pull).toBeLessThan(-0.02);
    expect((await reading(ordinary)).surprising).toBe(false);
    await team.mechanic.post(`${team.path}/runs/${slipped}/void`, { reason: 'Ring slipped.' }).expect(200);
    expect(await reading(slipped)).toMatchObject({
      voided: true,
      chance: null,
      pull: null,
      surprising: false,
    });
  });

  it('that are bounds tell how probable they were, and no pull', async () => {
    const bottomed = await reading(await ride(0));
    expect(bottomed).toMatchObject({ kind: 'at-least', pull: null });
    expect(bottomed.chance).toBeGreaterThan(0);
    expect(bottomed.chance).toBeLessThan(0.5);
  });

  it('are told alike whoever asks again', async () => {
    expect(await demand()).toEqual(await demand());
  });
});

describe('what is known of how a track suits single riders', () => {
  it('is mostly assumed for one rider on one track, and said to be', async () => {
    const { riderOnTrackSd, riderOnTrackSdSource } = await demand();
    expect(riderOnTrackSdSource).toBe('mostly prior');
    expect(riderOnTrackSd).toBeGreaterThan(0);
    expect(riderOnTrackSd).toBeLessThan(0.5);
  });

  it('is there for an end without a reading too', async () => {
    const { readings, riderOnTrackSdSource } = await demand('shock');
    expect(readings).toEqual([]);
    expect(riderOnTrackSdSource).toBe('mostly prior');
  });
});
