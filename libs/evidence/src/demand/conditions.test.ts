import { describe, expect, it } from 'vitest';
import { addReading } from './add-reading.js';
import { diagnoseDemand } from './diagnostics.js';
import { fitDemand } from './fit.js';
import { summaryOfMixture } from './mixture.js';
import { predictDemand } from './predict.js';
import { CONDITION_SD, DEFAULT_DEMAND_PRIORS, REFERENCE_CONDITION, type DemandReading } from './reading.js';

/** Scatter without randomness: the fractional parts of multiples of the golden ratio, mapped to about ± 0.25. */
const scatter = (i: number): number => 0.5 * (((i * 0.6180339887) % 1) - 0.5);

const readings = Array.from({ length: 60 }, (_, i): DemandReading => {
  const wet = i % 3 === 0;
  return {
    riderId: `rider ${i % 2}`,
    trackId: `track ${i % 4}`,
    logHeight: -0.7 + 0.1 * (i % 4) + scatter(i) - (wet ? 0.25 : 0),
    kind: i % 10 === 7 ? 'at-least' : 'exact',
    readingSd: 0.05,
    ...(wet ? { condition: 'wet' } : {}),
  };
});
const fit = fitDemand(readings);
const predicted = (condition?: string, from = fit) =>
  summaryOfMixture(
    predictDemand(from, {
      riderId: 'rider 1',
      trackId: 'track 1',
      ...(condition === undefined ? {} : { condition }),
    }),
  );

describe('the ground', () => {
  it('shrinks the effect of a condition as a normal prior of known sd says', () => {
    const sigma = 0.2;
    const runs = 5;
    const rows = Array.from({ length: runs }, (): DemandReading => ({
      riderId: 'one',
      trackId: 'one',
      logHeight: -0.3,
      kind: 'exact',
      readingSd: sigma,
      condition: 'wet',
    }));
    const priors = { ...DEFAULT_DEMAND_PRIORS, muMean: -0.7, muSd: 1e-6 };
    const [wet] = fitDemand(rows, priors, {
      fixedSds: { track: 0, rider: 0, riderOnTrack: 0, run: 0 },
    }).conditions;
    const precision = runs / sigma ** 2;
    const expected = (0.4 * precision) / (precision + 1 / CONDITION_SD ** 2);
    // Closed form; stored numbers have eight digits.
    expect(wet?.effect.mean).toBeCloseTo(expected, 6);
    expect(wet?.effect.sd).toBeCloseTo(1 / Math.sqrt(precision + 1 / CONDITION_SD ** 2), 6);
  });

  it('is told apart from tracks and riders, and predicted for', () => {
    expect(fit.conditions.map(({ id, readings: count }) => [id, count])).toEqual([['wet', 20]]);
    expect(fit.conditions[0]?.effect.mean).toBeLessThan(-0.15);
    expect(predicted('wet').mean).toBeLessThan(predicted().mean - 0.15);
  });

  it('left out is the reference ground, and unseen ground widens the prediction', () => {
    expect(predicted(REFERENCE_CONDITION)).toEqual(predicted());
    expect(predicted('muddy').mean).toBeCloseTo(predicted().mean, 9);
    expect(predicted('muddy').sd ** 2 - predicted().sd ** 2).toBeCloseTo(CONDITION_SD ** 2, 9);
  });

  it('named for every reading changes nothing when it is the reference', () => {
    const named = readings.map((reading) => ({
      ...reading,
      condition: reading.condition ?? REFERENCE_CONDITION,
    }));
    expect(fitDemand(named).components).toEqual(fit.components);
  });

  it('a reading on new ground joins a stored fit as a full fit would have it', () => {
    const extra: DemandReading = {
      ...(readings[1] as DemandReading),
      kind: 'exact',
      logHeight: -0.1,
      condition: 'dusty',
    };
    const added = addReading(fit, extra);
    expect(added.status).toBe('updated');
    const full = fitDemand([...readings, extra]);
    for (const condition of ['dusty', 'wet', 'dry']) {
      expect(Math.abs(predicted(condition, added.fit).mean - predicted(condition, full).mean)).toBeLessThan(
        0.01,
      );
    }
    expect(added.fit.conditions.find(({ id }) => id === 'dusty')?.readings).toBe(1);
  });

  it('is part of what a reading is judged by', () => {
    const odd = readings.map((reading, i) => (i === 3 ? { ...reading, logHeight: 0.9 } : reading));
    expect(diagnoseDemand(odd, fitDemand(odd))[0]?.index).toBe(3);
  });
});
