import { describe, expect, it } from 'vitest';
import { uniformNumbers } from '../numerics/random.js';
import { designOf } from './design.js';
import { DEFAULT_DEMAND_PRIORS, type DemandReading } from './reading.js';
import { SdSurface, type Place } from './sd-surface.js';
import { climb, type SurfaceTop } from './sd-top.js';

const TEAMS = 100;
/** Places of the grid along an axis, in the sds that the search gives; at most 0.8 of u apart from the top. */
const GRID = [-1, -0.5, 0, 0.5, 1];
const FARTHEST = 0.8;

/** A team of 1 to 60 readings whose riders and tracks differ not at all, a little or far more than the prior thinks. */
function teamOf(uniform: () => number): DemandReading[] {
  const oneOf = <T>(values: readonly T[]): T => values[Math.floor(values.length * uniform())] as T;
  const spread = (sd: number): number => sd * Math.sqrt(12) * (uniform() - 0.5);
  const [track, rider, pair, run] = [
    oneOf([0, 0.05, 0.3, 1]),
    oneOf([0, 0.05, 0.3, 1]),
    oneOf([0, 0.05, 0.3, 0.6]),
    oneOf([0.01, 0.05, 0.2, 0.6]),
  ];
  const riders = 1 + Math.floor(6 * uniform());
  const tracks = Array.from({ length: 1 + Math.floor(6 * uniform()) }, () => spread(track));
  const effects = Array.from({ length: riders }, () => spread(rider));
  const pairs = tracks.map(() => effects.map(() => spread(pair)));
  const exact = uniform();
  return Array.from({ length: 1 + Math.floor(60 * uniform() ** 2) }, (): DemandReading => {
    const [t, r] = [Math.floor(tracks.length * uniform()), Math.floor(riders * uniform())];
    const level = -0.7 + (tracks[t] as number) + (effects[r] as number) + (pairs[t]?.[r] as number);
    return {
      riderId: `${r}`,
      trackId: `${t}`,
      logHeight: level + spread(run),
      kind: uniform() < exact ? 'exact' : oneOf(['at-least', 'at-least', 'at-most']),
      readingSd: 0.02 + 0.1 * uniform(),
    };
  });
}

/** The highest of a grid around a top, log units above it. */
function missed(surface: SdSurface, { place, sds }: SurfaceTop): number {
  let grid: number[][] = [[]];
  for (const [axis, u] of place.u.entries()) {
    const reach = Math.min(FARTHEST, sds[axis] as number);
    grid = grid.flatMap((start) => GRID.map((by) => [...start, Math.abs(u + by * reach)]));
  }
  const highest = (found: Place): number => found.logDensity - place.logDensity;
  return Math.max(...grid.map((u) => highest(surface.at(u, place.posterior.factors))));
}

describe('the top of the density over the standard deviations', () => {
  const uniform = uniformNumbers(20);
  const tops = Array.from({ length: TEAMS }, () => {
    const surface = new SdSurface(designOf(teamOf(uniform)), DEFAULT_DEMAND_PRIORS, {});
    const top = climb(surface);
    return { top, missed: missed(surface, top), evaluations: surface.evaluations };
  });

  it('has a width along every axis, so that the lattice has steps of its own', () => {
    for (const { top } of tops) {
      for (const sd of top.sds) {
        expect(sd).toBeGreaterThan(0);
        expect(sd).toBeLessThan(Number.POSITIVE_INFINITY);
      }
    }
  });

  it('is near enough to start from: within a log unit of the best of a grid around it, mostly within a tenth', () => {
    const below = tops.map((top) => top.missed).sort((a, b) => a - b);
    // A search along axes stops within an sd of the top, and creeps on a ridge between two axes.
    expect(below[Math.floor(0.8 * TEAMS)]).toBeLessThan(0.1);
    expect(below.at(-1)).toBeLessThan(1);
  });
});
