import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { limitsOf } from './limits.js';
import { AS_NOW, checkProposal, stepFrom } from './proposal.js';
import { testFork } from './test-bike.js';

const limits = limitsOf(testFork.limits);
const noLimits = limitsOf({ minPressurePsi: null, maxPressurePsi: null, maxSpacers: null });
const now = { pressurePsi: 71.23, spacers: 2 };

describe('a proposal', () => {
  it('that changes nothing is exactly what is in the unit now', () => {
    expect(checkProposal(AS_NOW, now, limits)).toEqual({ fill: now, problems: {} });
  });

  it('refuses each field where it passes a limit of the unit, and gives nothing to compute', () => {
    expect(checkProposal({ pressurePsi: '121', spacers: '5' }, now, limits)).toEqual({
      fill: null,
      problems: { pressurePsi: 'above the limit', spacers: 'above the limit' },
    });
    expect(checkProposal({ pressurePsi: '39,5', spacers: '-1' }, now, limits).problems).toEqual({
      pressurePsi: 'below the limit',
      spacers: 'below the limit',
    });
  });

  it.each(['', 'abc', '7 1a', 'NaN', 'Infinity', '1e3'])('takes %j for no number', (pressurePsi) => {
    expect(checkProposal({ pressurePsi, spacers: null }, now, noLimits)).toEqual({
      fill: null,
      problems: { pressurePsi: 'not a number' },
    });
  });

  it('takes no part of a spacer', () => {
    expect(checkProposal({ pressurePsi: null, spacers: '1.5' }, now, limits).problems).toEqual({
      spacers: 'not whole',
    });
  });

  it('of a unit without limits ends at what any unit can take', () => {
    expect(checkProposal({ pressurePsi: '400', spacers: '12' }, now, noLimits).fill).not.toBeNull();
    expect(checkProposal({ pressurePsi: '601', spacers: '31' }, now, noLimits).problems).toEqual({
      pressurePsi: 'beyond any unit',
      spacers: 'beyond any unit',
    });
  });
});

describe('a press of the stepper', () => {
  it.each([
    [71, 1, 72],
    [71, -1, 70],
    [71.23, 1, 72],
    [71.23, -1, 71],
    [71.97, 1, 73],
    [72.03, -1, 71],
  ] as const)('from %d psi by %d goes to the whole psi %d, as the gauge shows it', (from, by, to) => {
    expect(stepFrom('pressurePsi', from, by, limits)).toEqual({ to });
  });

  it('stops at the limit ahead and says which', () => {
    expect(stepFrom('pressurePsi', 120, 1, limits)).toEqual({ refused: 'above the limit' });
    expect(stepFrom('pressurePsi', 40, -1, limits)).toEqual({ refused: 'below the limit' });
    expect(stepFrom('spacers', 0, -1, noLimits)).toEqual({ refused: 'below the limit' });
    expect(stepFrom('pressurePsi', 600, 1, noLimits)).toEqual({ refused: 'beyond any unit' });
  });

  it('brings a pressure back from outside the limits', () => {
    expect(stepFrom('pressurePsi', 131, -1, limits)).toEqual({ to: 130 });
    expect(stepFrom('pressurePsi', 30, 1, limits)).toEqual({ to: 31 });
  });

  it('never leads outside the limits from inside', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 40, max: 120, noNaN: true }),
        fc.constantFrom(1 as const, -1 as const),
        (from, by) => {
          const step = stepFrom('pressurePsi', from, by, limits);
          if ('to' in step) {
            expect(step.to).toBeGreaterThanOrEqual(40);
            expect(step.to).toBeLessThanOrEqual(120);
          }
        },
      ),
    );
  });
});
