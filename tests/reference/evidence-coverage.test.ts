import {
  CONDITION_SD,
  fitDemand,
  predictDemand,
  predictiveQuantile,
  type DemandReading,
  type PredictiveDistribution,
} from '@loamledger/evidence';
import { describe, expect, it } from 'vitest';
import { normals, uniforms } from './evidence-numbers.js';

const TEAMS = 150;
const NEW_RUNS_A_TEAM = 15;
/** A fit takes some 0.1 s, several times that on a machine with other work, ms. */
const TIME_FOR_ALL_TEAMS = 240_000;
const READINGS_A_TEAM = 40;
const RIDERS = 4;
const TRACKS = 5;

interface Truth {
  mu: number;
  track: number;
  rider: number;
  riderOnTrack: number;
  run: number;
}

interface Size {
  readings: number;
  riders: number;
  tracks: number;
  /** Share of the pairs of rider and track that have met. */
  met: number;
}

/** Kinds of ground that runs are on: of readings, and of new runs. The first is the one that the others differ from. */
interface Grounds {
  read: readonly string[];
  ridden: readonly string[];
}
const ONE_GROUND: Grounds = { read: ['dry'], ridden: ['dry'] };
const THREE_GROUNDS = ['dry', 'damp', 'wet'];

/** Shares of new hits, and of new readings of them, inside their 90 % interval. */
interface Shares {
  hits: number;
  readings: number;
}

const SMALL: Size = { readings: READINGS_A_TEAM, riders: RIDERS, tracks: TRACKS, met: 1 };
/** Some five runs a pair that met. */
const LARGE: Size = { readings: 120, riders: 6, tracks: 5, met: 0.8 };

/**
 * Shares of new runs inside the 90 % predictive interval, over invented teams whose sds come from `truth`. `unseen`
 * riders and tracks more than the team has readings of may turn up among the new runs. A new reading is the hit with a
 * reading error of its own sd; its interval is that of the hit widened by the same sd.
 */
function coverage(
  seed: number,
  unseen: number,
  truth: (normal: () => number) => Truth,
  { readings: count, riders: riderCount, tracks: trackCount, met: share }: Size = SMALL,
  grounds: Grounds = ONE_GROUND,
): Shares {
  const uniform = uniforms(seed);
  const normal = normals(uniform);
  // Of their own, so that the hits are the same whatever is read of them.
  const errors = uniforms(seed + 1000);
  const error = normals(errors);
  const inside = { hits: 0, readings: 0 };
  for (let team = 0; team < TEAMS; team += 1) {
    const sds = truth(normal);
    const tracks = Array.from({ length: trackCount + unseen }, () => sds.track * normal());
    const riders = Array.from({ length: riderCount + unseen }, () => sds.rider * normal());
    const pairs = tracks.map(() => riders.map(() => sds.riderOnTrack * normal()));
    const met = tracks.map(() => riders.map(() => uniform() < share));
    const [reference, ...others] = new Set([...grounds.read, ...grounds.ridden]);
    const shifts = new Map(others.map((ground) => [ground, CONDITION_SD * normal()]));
    const run = (t: number, r: number, ground: string): number =>
      sds.mu +
      (tracks[t] as number) +
      (riders[r] as number) +
      (pairs[t]?.[r] as number) +
      (ground === reference ? 0 : (shifts.get(ground) as number)) +
      sds.run * normal();
    const below = (n: number): number => Math.floor(uniform() * n);
    // No number is drawn where there is one ground, so that teams on one are the same whatever others ride.
    const oneOf = (kinds: readonly string[]): string => kinds[kinds.length === 1 ? 0 : below(kinds.length)] as string;
    const readings = Array.from({ length: count }, (): DemandReading => {
      let [t, r] = [below(trackCount), below(riderCount)];
      while (met[t]?.[r] !== true) [t, r] = [below(trackCount), below(riderCount)];
      const readingSd = 0.05 + 0.1 * uniform();
      const condition = oneOf(grounds.read);
      const logHeight = run(t, r, condition) + readingSd * normal();
      const fullTravel = sds.mu + 0.3 + 0.3 * uniform();
      const sag = sds.mu - 0.9;
      const row = { riderId: `${r}`, trackId: `${t}`, readingSd, condition };
      if (logHeight > fullTravel) return { ...row, logHeight: fullTravel, kind: 'at-least' };
      if (logHeight < sag) return { ...row, logHeight: sag, kind: 'at-most' };
      return { ...row, logHeight, kind: 'exact' };
    });
    const fit = fitDemand(readings);
    for (let i = 0; i < NEW_RUNS_A_TEAM; i += 1) {
      const [t, r] = [below(trackCount + unseen), below(riderCount + unseen)];
      const condition = oneOf(grounds.ridden);
      const hits = predictDemand(fit, { riderId: `${r}`, trackId: `${t}`, condition });
      const height = run(t, r, condition);
      inside.hits += Number(isWithin(hits, height));
      const readingSd = 0.05 + 0.1 * errors();
      inside.readings += Number(isWithin(ofReadings(hits, readingSd), height + readingSd * error()));
    }
  }
  const runs = TEAMS * NEW_RUNS_A_TEAM;
  return { hits: inside.hits / runs, readings: inside.readings / runs };
}

/** Of readings of new hits, by the sd of the reading error. */
const ofReadings = ({ sds, ...hits }: PredictiveDistribution, readingSd: number): PredictiveDistribution => ({
  ...hits,
  sds: sds.map((sd) => Math.hypot(sd, readingSd)),
});

const isWithin = (distribution: PredictiveDistribution, height: number): boolean =>
  height > predictiveQuantile(distribution, 0.05) && height < predictiveQuantile(distribution, 0.95);

/**
 * 90 % ± 2 %. The standard error of a share of 2,250 new runs is 0.63 % if they were independent; runs of one team
 * share their fit, which makes it about 0.8 %.
 */
describe('90 % predictive intervals hold 88 to 92 % of 2,250 new hits, and of readings of them', () => {
  const prior = (normal: () => number): Truth => ({
    mu: -0.7 + normal(),
    track: Math.abs(0.5 * normal()),
    rider: Math.abs(0.3 * normal()),
    riderOnTrack: Math.abs(0.15 * normal()),
    run: Math.abs(0.3 * normal()),
  });
  const alike = (riderOnTrack: number) => (): Truth => ({ mu: -0.7, track: 0.4, rider: 0.15, riderOnTrack, run: 0.2 });

  it.each([
    { name: 'of teams drawn from the prior, unseen riders and tracks included', seed: 11, unseen: 1, truth: prior, size: SMALL },
    // An unseen rider gets the prior's share of scatter between riders, twice what these teams have: wider on purpose.
    { name: 'of teams that are all alike, for riders and tracks with readings', seed: 12, unseen: 0, truth: alike(0.1), size: SMALL },
    { name: 'of such teams whose riders suit every track alike', seed: 13, unseen: 0, truth: alike(0), size: SMALL },
    { name: 'of such teams where a fifth of the pairs never met', seed: 14, unseen: 0, truth: alike(0.15), size: { ...SMALL, met: 0.8 } },
    { name: 'of large teams drawn from the prior, pairs that never met included', seed: 15, unseen: 0, truth: prior, size: LARGE },
    { name: 'of large teams whose riders differ on single tracks more than expected', seed: 16, unseen: 0, truth: alike(0.3), size: LARGE },
    { name: 'of teams that ride three kinds of ground', seed: 17, unseen: 0, truth: prior, size: SMALL, grounds: { read: THREE_GROUNDS, ridden: THREE_GROUNDS } },
    { name: 'of such teams on a kind of ground that they never rode', seed: 18, unseen: 0, truth: prior, size: SMALL, grounds: { read: THREE_GROUNDS, ridden: ['muddy'] } },
  ])('$name', { timeout: TIME_FOR_ALL_TEAMS }, ({ seed, unseen, truth, size, grounds }) => {
    const shares = coverage(seed, unseen, truth, size, grounds);
    for (const share of [shares.hits, shares.readings]) {
      expect(share).toBeGreaterThan(0.88);
      expect(share).toBeLessThan(0.92);
    }
  });
});
