import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { EndReadingInputDto } from '../modules/runs/run-input.dto.js';
import { BIKES } from './bikes.js';
import { RIDERS } from './people.js';
import { SEASON, SEASON_SEED } from './season.js';
import { simulateSeason, type SimulatedRun } from './simulator.js';
import { UNITS } from './units.js';

const runsOf = (seed: number): SimulatedRun[] => simulateSeason(SEASON, seed).flatMap(({ runs }) => runs);
const voidOf = ({ input, voidedLater }: SimulatedRun) => input.spoilt ?? voidedLater;
/** A whole season is a thousand landings: few seasons say enough. */
const seeds = fc.integer({ min: 0, max: 2 ** 32 - 1 });
const FEW = { numRuns: 10 };

const usedMm = (reading: EndReadingInputDto, strokeMm: number) =>
  reading.travelUsedMm ?? strokeMm - (reading.travelLeftMm ?? NaN);

describe('a simulated season', () => {
  it('is the same for the same seed and another for another', () => {
    expect(runsOf(7)).toEqual(runsOf(7));
    expect(runsOf(7)).not.toEqual(runsOf(8));
  });

  it('has every run of the scenario, in the order of their starts, each rider on one bike at a time', () => {
    const planned = SEASON.flatMap(({ stints }) => stints).reduce((sum, { runs }) => sum + runs, 0);
    expect(runsOf(SEASON_SEED)).toHaveLength(planned);
    for (const { runs } of simulateSeason(SEASON, SEASON_SEED)) {
      const starts = runs.map(({ input }) => input.startedAt ?? '');
      expect(starts).toEqual(starts.toSorted());
      expect(new Set(starts).size).toBe(starts.length);
      for (const rider of new Set(runs.map(({ bike }) => BIKES[bike].rider))) {
        const own = runs.flatMap(({ bike }) => (BIKES[bike].rider === rider ? [bike] : []));
        const stints = own.filter((bike, i) => bike !== own[i + 1]);
        expect(stints.length).toBe(new Set(own).size);
      }
    }
  });

  it('splits a time over the sections of the track without a remainder', () => {
    const split = runsOf(SEASON_SEED).flatMap(({ input }) =>
      input.timeS != null && input.sectionTimes ? [{ timeS: input.timeS, sections: input.sectionTimes }] : [],
    );
    expect(split.length).toBeGreaterThan(20);
    for (const { timeS, sections } of split) {
      expect(sections.every((section) => section.timeS > 1)).toBe(true);
      expect(sections.reduce((sum, section) => sum + section.timeS, 0)).toBeCloseTo(timeS, 6);
    }
  });

  it('reads every ring between 0 and the stroke, to a whole millimetre or at the stroke', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        for (const { bike, input } of runsOf(seed)) {
          for (const end of ['fork', 'shock'] as const) {
            const reading = input[end];
            if (!reading) continue;
            const { strokeMm } = UNITS[BIKES[bike][end]].input;
            const used = usedMm(reading, strokeMm);
            expect(used).toBeGreaterThanOrEqual(0);
            expect(used).toBeLessThanOrEqual(strokeMm);
            expect(used === strokeMm || Number.isInteger(used)).toBe(true);
          }
        }
      }),
      FEW,
    );
  });

  it('voids some runs and never many, each with a reason', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const runs = runsOf(seed);
        const voided = runs.filter((run) => voidOf(run) !== null);
        // 7 % of 231 runs: 16 ± 3.9, so six standard deviations on both sides hold for any seed.
        expect(voided.length).toBeGreaterThan(0);
        expect(voided.length).toBeLessThan(40);
        for (const run of voided) expect(voidOf(run)?.reason).not.toBe('');
        for (const { input, voidedLater } of runs) expect(input.spoilt && voidedLater).toBeNull();
      }),
      FEW,
    );
  });

  it('leaves shuttle runs untimed and some others too', () => {
    const runs = runsOf(SEASON_SEED);
    const shuttles = runs.filter(({ input }) => input.note?.includes('shuttle'));
    expect(shuttles.length).toBeGreaterThan(10);
    for (const { input } of shuttles) expect(input.timeS).toBeNull();
    expect(runs.filter(({ input }) => input.timeS == null).length).toBeGreaterThan(shuttles.length);
  });

  it('takes longer on the first run of a day than on the last, learning against tiring and scatter', () => {
    // Three per cent of learning less half a per cent of tiring; scatter leaves a standard error of some 0.1 %.
    const ratios = Array.from({ length: 8 }, (_, seed) => simulateSeason(SEASON, seed))
      .flat()
      .flatMap(({ runs }) =>
        [...new Set(runs.map((run) => run.bike))].flatMap((bike) => {
          const times = runs.flatMap((run) =>
            run.bike === bike && run.input.timeS && !voidOf(run) ? [run.input.timeS] : [],
          );
          return times.length > 3 ? [Math.log((times[0] ?? 1) / (times.at(-1) ?? 1))] : [];
        }),
      );
    const mean = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
    expect(mean).toBeGreaterThan(0.01);
    expect(mean).toBeLessThan(0.035);
  });

  it('uses full travel on some runs of the season that is entered', () => {
    const full = runsOf(SEASON_SEED).filter(({ bike, input }) => {
      const { strokeMm } = UNITS[BIKES[bike].fork].input;
      return input.fork && strokeMm - usedMm(input.fork, strokeMm) <= 3;
    });
    expect(full.length).toBeGreaterThan(3);
  });
});

describe('the scenario', () => {
  it('has the size of a small team', () => {
    expect(Object.keys(RIDERS).length).toBeGreaterThanOrEqual(4);
    expect(Object.values(BIKES).map(({ input }) => input.category)).toEqual(
      expect.arrayContaining(['trail', 'enduro', 'downhill']),
    );
    expect(Object.keys(UNITS)).toHaveLength(2 * Object.keys(BIKES).length);
  });

  it('has exactly one unit without limits entered', () => {
    const without = Object.values(UNITS).filter(({ input }) => input.maxPressurePsi === null);
    expect(without).toHaveLength(1);
  });
});
