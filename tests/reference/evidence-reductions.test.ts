import { describe, expect, it } from 'vitest';
import { conditionalPosterior } from '../../libs/evidence/src/demand/conditional-posterior.js';
import { designOf } from '../../libs/evidence/src/demand/design.js';
import type { DemandReading } from '../../libs/evidence/src/demand/reading.js';
import { choleskyInPlace, inverseFromCholesky } from '../../libs/evidence/src/numerics/cholesky.js';
import { logNormalCdf } from '../../libs/evidence/src/numerics/normal.js';
import { reference } from './evidence-reference.js';

interface Survreg {
  estimate: number[];
  se: number[];
  logLik: number;
  logLik_null: number;
}

const lung = reference<{
  data: Record<'time' | 'event' | 'age' | 'sex', number[]>;
  result: { lognormal: Survreg; gaussian: Survreg };
}>('survreg_lung');
const tobin = reference<{ data: Record<'durable' | 'age' | 'quant', number[]>; result: Survreg }>('survreg_tobin');

interface CensoredRow {
  y: number;
  /** 0: a value; 1: at least y; −1: at most y. */
  side: number;
  x: number[];
}

/**
 * Maximum likelihood for a censored regression by Newton steps in (β/s, 1/s), where it is concave (Olsen 1978, from
 * memory), out of the pieces that the demand model's bounds are made of.
 */
function censoredRegression(rows: readonly CensoredRow[]): { estimate: number[]; se: number[]; logLik: number } {
  const p = (rows[0] as CensoredRow).x.length + 1;
  let parameters = new Float64Array(p);
  const mean = rows.reduce((sum, row) => sum + row.y, 0) / rows.length;
  const sd = Math.sqrt(rows.reduce((sum, row) => sum + (row.y - mean) ** 2, 0) / rows.length);
  parameters[0] = mean / sd;
  parameters[p - 1] = 1 / sd;
  const evaluate = (theta: Float64Array) => {
    let logLik = 0;
    const gradient = new Float64Array(p);
    const information = new Float64Array(p * p);
    for (const row of rows) {
      // Residual (y − xβ)/s as a linear form in the parameters.
      const form = [...row.x.map((x) => -x), row.y];
      const z = form.reduce((sum, value, i) => sum + value * (theta[i] as number), 0);
      const inverseScale = theta[p - 1] as number;
      let slope = -z;
      let bend = 1;
      if (row.side === 0) {
        logLik += Math.log(inverseScale) - 0.5 * Math.log(2 * Math.PI) - 0.5 * z * z;
      } else {
        const bound = logNormalCdf(-row.side * z);
        logLik += bound.value;
        slope = -row.side * bound.slope;
        bend = bound.curvature;
      }
      for (let i = 0; i < p; i += 1) {
        gradient[i] = (gradient[i] as number) + slope * (form[i] as number);
        for (let j = 0; j < p; j += 1) {
          information[i * p + j] = (information[i * p + j] as number) + bend * (form[i] as number) * (form[j] as number);
        }
      }
      if (row.side === 0) {
        gradient[p - 1] = (gradient[p - 1] as number) + 1 / inverseScale;
        information[p * p - 1] = (information[p * p - 1] as number) + 1 / inverseScale ** 2;
      }
    }
    return { logLik, gradient, information };
  };
  for (let step = 0; step < 50; step += 1) {
    const { gradient, information, logLik } = evaluate(parameters);
    choleskyInPlace(information, p);
    const inverse = inverseFromCholesky(information, p);
    const move = gradient.map((_, i) => gradient.reduce((sum, g, j) => sum + (inverse[i * p + j] as number) * g, 0));
    let share = 1;
    const at = (length: number): Float64Array => parameters.map((value, i) => value + length * (move[i] as number));
    while ((at(share)[p - 1] as number) <= 0 || evaluate(at(share)).logLik < logLik - 1e-9) share /= 2;
    parameters = at(share) as Float64Array<ArrayBuffer>;
  }
  const { logLik, information } = evaluate(parameters);
  choleskyInPlace(information, p);
  const covariance = inverseFromCholesky(information, p);
  const scale = 1 / (parameters[p - 1] as number);
  // Delta method from (γ, 1/s) to (β, log s).
  const se = Array.from({ length: p }, (_, k) => {
    const jacobian = Array.from({ length: p }, (__, i) => {
      if (k === p - 1) return i === p - 1 ? -scale : 0;
      if (i === k) return scale;
      return i === p - 1 ? -(parameters[k] as number) * scale * scale : 0;
    });
    let variance = 0;
    for (let i = 0; i < p; i += 1) {
      for (let j = 0; j < p; j += 1) {
        variance += (jacobian[i] as number) * (covariance[i * p + j] as number) * (jacobian[j] as number);
      }
    }
    return Math.sqrt(variance);
  });
  const estimate = Array.from(parameters, (value, i) => (i === p - 1 ? Math.log(scale) : value * scale));
  return { estimate, se, logLik };
}

const intercept = (rows: readonly CensoredRow[]): CensoredRow[] => rows.map((row) => ({ ...row, x: [1] }));

const lungRows = (transform: (time: number) => number): CensoredRow[] =>
  lung.data.time.map((time, i) => ({
    y: transform(time),
    side: lung.data.event[i] === 1 ? 0 : 1,
    x: [1, lung.data.age[i] as number, lung.data.sex[i] as number],
  }));
/** Change of variables from log time to time, over the values that are not bounds. */
const jacobian = lung.data.time.reduce((sum, time, i) => sum + (lung.data.event[i] === 1 ? Math.log(time) : 0), 0);
const tobinRows: CensoredRow[] = tobin.data.durable.map((y, i) => ({
  y,
  side: y > 0 ? 0 : -1,
  x: [1, tobin.data.age[i] as number, tobin.data.quant[i] as number],
}));

describe('the likelihood of bounds is that of a censored regression', () => {
  it.each([
    { name: 'lognormal, right-censored, 228 rows', rows: lungRows(Math.log), result: lung.result.lognormal, jacobian },
    { name: 'gaussian, right-censored, 228 rows', rows: lungRows((time) => time), result: lung.result.gaussian, jacobian: 0 },
    { name: 'gaussian, left-censored, 20 rows', rows: tobinRows, result: tobin.result, jacobian: 0 },
  ])('$name', ({ rows, result, jacobian: change }) => {
    const fit = censoredRegression(rows);
    // Tolerances of the files: coefficients 1e-6 relative, log likelihood 1e-6; standard errors the same.
    for (const [i, expected] of result.estimate.entries()) {
      expect(Math.abs((fit.estimate[i] as number) / expected - 1)).toBeLessThan(1e-6);
      expect(Math.abs((fit.se[i] as number) / (result.se[i] as number) - 1)).toBeLessThan(1e-6);
    }
    expect(fit.logLik - change).toBeCloseTo(result.logLik, 6);
    expect(censoredRegression(intercept(rows)).logLik - change).toBeCloseTo(result.logLik_null, 6);
  });

  it('and the demand model with no effects and a known scatter has it as its evidence', () => {
    const rows = intercept(lungRows(Math.log));
    const { estimate, logLik } = censoredRegression(rows);
    const readings = rows.map(
      (row): DemandReading => ({
        riderId: 'one',
        trackId: 'one',
        logHeight: row.y,
        kind: row.side === 1 ? 'at-least' : 'exact',
        readingSd: 0,
      }),
    );
    const sds = { track: 0, rider: 0, riderOnTrack: 0, run: Math.exp(estimate[1] as number) };
    const point = conditionalPosterior(designOf(readings), sds, { mean: estimate[0] as number, sd: 1e-9 });
    // mu is a point, so no bound is approximated; 1e-6 is left for an sd of 1e-9 that is not quite a point.
    expect(point.logEvidence).toBeCloseTo(logLik, 6);
    const flat = conditionalPosterior(designOf(readings), sds, { mean: 0, sd: 1e3 });
    // With mu free its posterior mean is the maximum but for skewness, a few thousandths of a standard error.
    const { se } = censoredRegression(rows);
    expect(Math.abs((flat.mean[0] as number) - (estimate[0] as number))).toBeLessThan(0.02 * (se[0] as number));
    // Knowing the scale can only narrow it.
    expect(Math.sqrt(flat.covariance[0] as number)).toBeLessThan(se[0] as number);
  });

  it('with track effects of infinite scatter every track has a censored regression of its own', () => {
    const rows = lungRows(Math.log).map((row) => ({ ...row, x: [Number(row.x[2] === 1), Number(row.x[2] === 2)] }));
    const { estimate, se } = censoredRegression(rows);
    const readings = rows.map(
      (row): DemandReading => ({
        riderId: 'one',
        trackId: row.x[0] === 1 ? 'first' : 'second',
        logHeight: row.y,
        kind: row.side === 1 ? 'at-least' : 'exact',
        readingSd: 0,
      }),
    );
    const sds = { track: 1e3, rider: 0, riderOnTrack: 0, run: Math.exp(estimate[2] as number) };
    const { mean } = conditionalPosterior(designOf(readings), sds, { mean: 0, sd: 1e-6 });
    for (const track of [0, 1]) {
      expect(Math.abs((mean[1 + track] as number) - (estimate[track] as number))).toBeLessThan(
        0.03 * (se[track] as number),
      );
    }
  });
});

interface Lme {
  fixef: Record<string, number>;
  fixef_se: Record<string, number>;
  varcorr: { sdcor: number[] };
  logLik: number;
  ranef: Record<string, { level: string[]; '(Intercept)': number[] }>;
}

const dyestuff = reference<{
  data: Record<'Dyestuff' | 'Dyestuff2', { Yield: number[]; Batch: string[] }>;
  result: Record<'Dyestuff' | 'Dyestuff2', Lme>;
}>('lme4_dyestuff');
const sleep = reference<{
  data: { Reaction: number[]; Days: number[]; Subject: string[] };
  result: { REML_random_intercept: Lme };
}>('lme4_sleepstudy');

const exactReadings = (values: readonly number[], groups: readonly string[]): DemandReading[] =>
  values.map((logHeight, i) => ({
    riderId: 'one',
    trackId: groups[i] as string,
    logHeight,
    kind: 'exact',
    readingSd: 0,
  }));

describe('with exact readings and one random part it is a linear mixed model', () => {
  /** Flat prior of mu: sd 1e4 around the mean; its density √(2π)·1e4 is taken out again, error below 1e-6. */
  const FLAT = 1e4;
  const restricted = (readings: readonly DemandReading[], mean: number, track: number, run: number) => {
    const posterior = conditionalPosterior(designOf(readings), { track, rider: 0, riderOnTrack: 0, run }, { mean, sd: FLAT });
    return { posterior, logLik: posterior.logEvidence + Math.log(FLAT * Math.sqrt(2 * Math.PI)) };
  };

  it.each(['Dyestuff', 'Dyestuff2'] as const)('%s: restricted likelihood, its maximum, mean and batch effects', (name) => {
    const { Yield, Batch } = dyestuff.data[name];
    const expected = dyestuff.result[name];
    const readings = exactReadings(Yield, Batch);
    const [track, run] = expected.varcorr.sdcor as [number, number];
    const fixed = expected.fixef['(Intercept)'] as number;
    const { posterior, logLik } = restricted(readings, fixed, track, run);
    // Tolerances of the file: log likelihood 1e-5, effects 1e-3.
    expect(logLik).toBeCloseTo(expected.logLik, 5);
    expect(Math.sqrt(posterior.covariance[0] as number)).toBeCloseTo(expected.fixef_se['(Intercept)'] as number, 4);
    for (const [i, effect] of (expected.ranef.Batch?.['(Intercept)'] ?? []).entries()) {
      expect(posterior.mean[1 + i]).toBeCloseTo(effect, 3);
    }
    for (const share of [0.95, 1.05]) {
      expect(restricted(readings, fixed, track, run * share).logLik).toBeLessThan(logLik);
      expect(restricted(readings, fixed, track * share + (track === 0 ? 0.2 : 0), run).logLik).toBeLessThan(logLik);
    }
  });

  it('sleepstudy: effects of 18 subjects and their mean around a known slope', () => {
    const { Reaction, Days, Subject } = sleep.data;
    const expected = sleep.result.REML_random_intercept;
    const slope = expected.fixef.Days as number;
    const values = Reaction.map((reaction, i) => reaction - slope * (Days[i] as number));
    const [track, run] = expected.varcorr.sdcor as [number, number];
    const { posterior } = restricted(exactReadings(values, Subject), 250, track, run);
    expect(posterior.mean[0]).toBeCloseTo(expected.fixef['(Intercept)'] as number, 3);
    // Levels and tracks are both sorted.
    for (const [i, effect] of (expected.ranef.Subject?.['(Intercept)'] ?? []).entries()) {
      expect(posterior.mean[1 + i]).toBeCloseTo(effect, 3);
    }
  });
});
