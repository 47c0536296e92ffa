import type { DemandPriors, DemandReading } from '@loamledger/evidence';
import { normals, uniforms } from './evidence-numbers.js';

/** Mean and standard deviation of draws. */
export interface Moments {
  mean: number;
  sd: number;
}

/**
 * Independent check of the demand model: Metropolis within Gibbs with every unknown drawn for itself and the bounds
 * filled in by truncated draws (Albert and Chib 1993, from memory). Slow and plain on purpose; it shares no code with
 * the library. `riderOnTrackSd`, when given, is known beforehand.
 */
export function sampleDemand(
  readings: readonly DemandReading[],
  priors: DemandPriors,
  sweeps: number,
  seed: number,
  riderOnTrackSd?: number,
): { cell: (riderId: string, trackId: string) => { level: Moments; q05: number; q95: number } } {
  const uniform = uniforms(seed);
  const normal = normals(uniform);
  const tracks = [...new Set(readings.map((reading) => reading.trackId))].sort();
  const riders = [...new Set(readings.map((reading) => reading.riderId))].sort();
  const t = readings.map((reading) => tracks.indexOf(reading.trackId));
  const r = readings.map((reading) => riders.indexOf(reading.riderId));
  const a = tracks.map(() => 0);
  const b = riders.map(() => 0);
  const pairs = tracks.flatMap((_, k) => riders.map((__, l) => [k, l] as const));
  const c = pairs.map(() => 0);
  const p = readings.map((_, i) => (t[i] as number) * riders.length + (r[i] as number));
  const y = readings.map((reading) => reading.logHeight);
  const sd = {
    track: priors.trackSdScale,
    rider: priors.riderSdScale,
    riderOnTrack: riderOnTrackSd ?? priors.riderOnTrackSdScale,
    run: priors.runSdScale,
  };
  let mu = priors.muMean;
  const draws = new Map<string, number[]>();
  const level = (i: number): number => mu + (a[t[i] as number] as number) + (b[r[i] as number] as number) + (c[p[i] as number] as number);
  const variance = (i: number): number => sd.run ** 2 + (readings[i] as DemandReading).readingSd ** 2;

  const update = (rows: readonly number[], current: number, priorMean: number, priorVariance: number): number => {
    let precision = 1 / priorVariance;
    let weighted = priorMean / priorVariance;
    for (const i of rows) {
      precision += 1 / variance(i);
      weighted += ((y[i] as number) - level(i) + current) / variance(i);
    }
    return weighted / precision + normal() / Math.sqrt(precision);
  };
  /** Random walk on log sd against a half-normal prior. */
  const walk = (value: number, scale: number, logLikelihood: (sd: number) => number): number => {
    const trial = value * Math.exp(0.5 * normal());
    const log = (x: number): number => logLikelihood(x) - 0.5 * (x / scale) ** 2 + Math.log(x);
    return Math.log(uniform()) < log(trial) - log(value) ? trial : value;
  };
  const all = readings.map((_, i) => i);
  const rowsOfTrack = tracks.map((_, k) => all.filter((i) => t[i] === k));
  const rowsOfPair = pairs.map((_, k) => all.filter((i) => p[i] === k));
  const rowsOfRider = riders.map((_, k) => all.filter((i) => r[i] === k));
  const effects = (values: readonly number[]) => (x: number) =>
    values.reduce((sum, value) => sum - Math.log(x) - 0.5 * (value / x) ** 2, 0);
  const burnIn = sweeps / 10;
  for (let sweep = 0; sweep < sweeps + burnIn; sweep += 1) {
    for (const [i, reading] of readings.entries()) {
      if (reading.kind === 'exact') continue;
      const s = Math.sqrt(variance(i));
      const side = reading.kind === 'at-least' ? 1 : -1;
      y[i] = level(i) + side * s * aboveLimit((side * (reading.logHeight - level(i))) / s, uniform);
    }
    mu = update(all, mu, priors.muMean, priors.muSd ** 2);
    for (const k of tracks.keys()) a[k] = update(rowsOfTrack[k] ?? [], a[k] as number, 0, sd.track ** 2);
    // A track of bounds alone: its effect and the filled-in readings travel together, or the chain would creep.
    for (const k of tracks.keys()) {
      const rows = rowsOfTrack[k] ?? [];
      if (rows.some((i) => (readings[i] as DemandReading).kind === 'exact')) continue;
      const by = 0.4 * normal();
      const moved = (a[k] as number) + by;
      const holds = rows.every((i) => {
        const { kind, logHeight } = readings[i] as DemandReading;
        return kind === 'at-least' ? (y[i] as number) + by > logHeight : (y[i] as number) + by < logHeight;
      });
      const logRatio = ((a[k] as number) ** 2 - moved ** 2) / (2 * sd.track ** 2);
      if (!holds || Math.log(uniform()) > logRatio) continue;
      a[k] = moved;
      for (const i of rows) y[i] = (y[i] as number) + by;
    }
    for (const k of riders.keys()) b[k] = update(rowsOfRider[k] ?? [], b[k] as number, 0, sd.rider ** 2);
    for (const k of pairs.keys()) c[k] = update(rowsOfPair[k] ?? [], c[k] as number, 0, sd.riderOnTrack ** 2);
    // A track's or a rider's effect and those of its pairs trade off in the same way.
    for (const [effect, mine, variance_] of [
      ...tracks.map((_, k) => [a, k, sd.track ** 2] as const),
      ...riders.map((_, l) => [b, l, sd.rider ** 2] as const),
    ]) {
      const own = [...pairs.keys()].filter((k) => pairs[k]?.[effect === a ? 0 : 1] === mine);
      const precision = own.length / sd.riderOnTrack ** 2 + 1 / variance_;
      const sum = own.reduce((total, k) => total + (c[k] as number), 0);
      const shift =
        (sum / sd.riderOnTrack ** 2 - (effect[mine] as number) / variance_) / precision + normal() / Math.sqrt(precision);
      effect[mine] = (effect[mine] as number) + shift;
      for (const k of own) c[k] = (c[k] as number) - shift;
    }
    // mu and the effects trade off along a line; moving both at once lets the chain travel along it.
    for (const [values, variance_] of [
      [a, sd.track ** 2],
      [b, sd.rider ** 2],
    ] as const) {
      const precision = values.length / variance_ + 1 / priors.muSd ** 2;
      const sum = values.reduce((total, value) => total + value, 0);
      const shift = (sum / variance_ - (mu - priors.muMean) / priors.muSd ** 2) / precision + normal() / Math.sqrt(precision);
      mu += shift;
      for (const k of values.keys()) values[k] = (values[k] as number) - shift;
    }
    sd.track = walk(sd.track, priors.trackSdScale, effects(a));
    sd.rider = walk(sd.rider, priors.riderSdScale, effects(b));
    if (riderOnTrackSd === undefined) {
      sd.riderOnTrack = walk(sd.riderOnTrack, priors.riderOnTrackSdScale, effects(c));
    }
    sd.run = walk(sd.run, priors.runSdScale, (x) =>
      all.reduce((sum, i) => {
        const v = x * x + (readings[i] as DemandReading).readingSd ** 2;
        return sum - 0.5 * Math.log(v) - (0.5 * ((y[i] as number) - level(i)) ** 2) / v;
      }, 0),
    );
    if (sweep < burnIn) continue;
    for (const [k, track] of tracks.entries()) {
      for (const [l, rider] of riders.entries()) {
        const key = `${rider} ${track}`;
        const list = draws.get(key) ?? [];
        list.push(mu + (a[k] as number) + (b[l] as number) + (c[k * riders.length + l] as number) + sd.run * normal());
        draws.set(key, list);
      }
    }
  }
  return {
    cell: (riderId, trackId) => {
      const list = (draws.get(`${riderId} ${trackId}`) ?? []).sort((x, z) => x - z);
      const mean = list.reduce((sum, x) => sum + x, 0) / list.length;
      const spread = list.reduce((sum, x) => sum + (x - mean) ** 2, 0) / list.length;
      const at = (p: number): number => list[Math.floor(p * list.length)] as number;
      return { level: { mean, sd: Math.sqrt(spread) }, q05: at(0.05), q95: at(0.95) };
    },
  };
}

/** Standard normal above `limit`: plain rejection, or Robert's exponential proposal in the tail (1995, from memory). */
function aboveLimit(limit: number, uniform: () => number): number {
  const normal = normals(uniform);
  if (limit < 0.5) {
    for (;;) {
      const z = normal();
      if (z > limit) return z;
    }
  }
  const rate = (limit + Math.sqrt(limit * limit + 4)) / 2;
  for (;;) {
    const z = limit - Math.log(1 - uniform()) / rate;
    if (uniform() < Math.exp(-0.5 * (z - rate) ** 2)) return z;
  }
}
