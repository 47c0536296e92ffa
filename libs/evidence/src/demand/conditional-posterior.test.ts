import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BoundPasses, SETTLED } from './bound-passes.js';
import { CellSystem } from './cell-system.js';
import { conditionalPosterior, readingsAtRunSd } from './conditional-posterior.js';
import { designOf } from './design.js';
import type { DemandReading } from './reading.js';

const MU = { mean: -0.7, sd: 1 };

const bound: fc.Arbitrary<DemandReading> = fc.record({
  riderId: fc.integer({ min: 1, max: 8 }).map(String),
  trackId: fc.integer({ min: 1, max: 3 }).map(String),
  logHeight: fc.double({ min: -2, max: 0.5, noNaN: true }),
  kind: fc.constantFrom('at-least', 'at-least', 'at-most', 'exact'),
  readingSd: fc.double({ min: 0.02, max: 0.07, noNaN: true }),
});
/** Many bounds on few tracks, where full steps overshoot and mixing does not always settle. */
const bounds = fc.array(bound, { minLength: 1, maxLength: 200, size: 'max' });
const sds = fc.record({
  track: fc.double({ min: 0.02, max: 2, noNaN: true }),
  rider: fc.double({ min: 0.02, max: 0.6, noNaN: true }),
  riderOnTrack: fc.double({ min: 0, max: 0.3, noNaN: true }),
  run: fc.double({ min: 0.005, max: 0.3, noNaN: true }),
});

describe('a posterior given the standard deviations', () => {
  it('that has converged moves by less than what counts as settled in one more full pass', () => {
    fc.assert(
      fc.property(bounds, sds, (readings, given) => {
        const design = designOf(readings);
        const posterior = conditionalPosterior(design, given, MU);
        expect(posterior.status).toBe('converged');
        const { sums, bounds: rows } = readingsAtRunSd(design, given.run, MU.mean);
        const system = new CellSystem(design, MU.sd);
        system.use(given);
        expect(system.solve(sums, posterior.factors)).toBe(true);
        const passes = new BoundPasses(design);
        passes.begin(rows, posterior.factors);
        expect(passes.pass(system)).toBeLessThan(SETTLED);
      }),
      // Some 1 in 100 of them needs more than the quick passes.
      { numRuns: 500 },
    );
  });

  it('has the mean and evidence of the readings alone where there are no bounds', () => {
    const reading: DemandReading = {
      riderId: 'a',
      trackId: 'b',
      logHeight: 0.3,
      kind: 'exact',
      readingSd: 0.1,
    };
    const given = { track: 0.5, rider: 0.3, riderOnTrack: 0.1, run: 0.2 };
    const posterior = conditionalPosterior(designOf([reading]), given, MU);
    expect(posterior.status).toBe('converged');
    // One reading of a sum of normals: closed form, right but for rounding.
    const variance = MU.sd ** 2 + 0.5 ** 2 + 0.3 ** 2 + 0.1 ** 2 + 0.2 ** 2 + 0.1 ** 2;
    expect(posterior.mean[0]).toBeCloseTo(MU.mean + (0.3 - MU.mean) / variance, 12);
    expect(posterior.logEvidence).toBeCloseTo(
      -0.5 * Math.log(2 * Math.PI * variance) - (0.5 * (0.3 - MU.mean) ** 2) / variance,
      12,
    );
  });
});
