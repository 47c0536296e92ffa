import { airSpring, sag, springForce, travelForHeight } from '@loamledger/spring';
import { describe, expect, it } from 'vitest';
import { ridingSteps } from './big-step.js';
import { mountOf, sceneOf } from './mount.js';
import { reboundFor } from './rebound.js';
import { tradedSpacers, tradeFor } from './spacer-trade.js';
import { testFork } from './test-bike.js';

const mount = mountOf(testFork);
const now = { pressurePsi: 71, spacers: 2 };
const HIT = 0.5;

const springAt = (pressurePsi: number, spacers: number) =>
  airSpring(mount.unit, sceneOf(mount, { pressurePsi, spacers }).fill);
const pressureOf = (kept: { status: string; pressurePsi?: number } | undefined) =>
  kept?.pressurePsi ?? Number.NaN;

describe('a spacer trade', () => {
  const trade = tradeFor(mount, now, 3, HIT);
  const before = springAt(71, 2);

  it('keeps what it says, asked of the engine again', () => {
    const travel = (psi: number, spacers: number) => travelForHeight(springAt(psi, spacers), mount.end, HIT);
    // The trade's pressure is good to 1e-6 psi, a travel to 1e-7 m.
    expect(travel(pressureOf(trade?.peakTravel), 3).travel).toBeCloseTo(travel(71, 2).travel, 6);
    const middle = before.stroke / 2;
    expect(springForce(springAt(pressureOf(trade?.midStroke), 3), middle)).toBeCloseTo(
      springForce(before, middle),
      6,
    );
    expect(sag(springAt(pressureOf(trade?.sag), 3), mount.end).travel).toBeCloseTo(
      sag(before, mount.end).travel,
      9,
    );
  });

  it('takes more air out for what comes later in the stroke', () => {
    expect(pressureOf(trade?.peakTravel)).toBeLessThan(pressureOf(trade?.midStroke));
    expect(pressureOf(trade?.midStroke)).toBeLessThan(pressureOf(trade?.sag));
    expect(pressureOf(trade?.sag)).toBeLessThan(71);
  });

  it('has an answer without a track, and where the big hit bottoms as it is', () => {
    expect(tradeFor(mount, now, 3, undefined)?.peakTravel.status).toBe('found');
    expect(tradeFor(mount, now, 3, 5)?.peakTravel.status).toBe('found');
  });

  it('is told for the proposed count, else for one more, else for one fewer', () => {
    expect(tradedSpacers(2, 4, 4)).toBe(4);
    expect(tradedSpacers(2, 2, 4)).toBe(3);
    expect(tradedSpacers(4, 4, 4)).toBe(3);
    expect(tradeFor(mount, { pressurePsi: 71, spacers: 0 }, tradedSpacers(0, 0, 0), HIT)).toBeNull();
  });
});

describe('rebound after a change', () => {
  it('is looked at where the spring rate moves by more than a click, and left alone otherwise', () => {
    expect(reboundFor(mount, now, { pressurePsi: 95, spacers: 2 })).toBe('slower');
    expect(reboundFor(mount, now, { pressurePsi: 50, spacers: 2 })).toBe('faster');
    expect(reboundFor(mount, now, now)).toBe('keep');
  });
});

describe('steps to ride', () => {
  it('are one for a small change, and none for no change', () => {
    expect(ridingSteps(now, { pressurePsi: 74, spacers: 3 })).toEqual([{ pressurePsi: 74, spacers: 3 }]);
    expect(ridingSteps(now, now)).toEqual([]);
  });

  it('split a big change into a spacer and a tenth of the pressure each', () => {
    expect(ridingSteps(now, { pressurePsi: 59, spacers: 4 })).toEqual([
      { pressurePsi: 67, spacers: 3 },
      { pressurePsi: 63, spacers: 3 },
      { pressurePsi: 59, spacers: 4 },
    ]);
  });
});
