/** Measures the spring engine: landings, hit heights, a whole grid; against a general-purpose package in the same run. */
import { Session, type HeapProfiler } from 'node:inspector';
import {
  bottomingGrid,
  hitHeight,
  landing,
  leverageFromTable,
  travelForHeight,
  type SprungEnd,
} from '@loamledger/spring';
import { gaugePascalFromPsi, PASCAL_PER_PSI } from '@loamledger/units';
import { landWithPackage } from './general-package.js';
import { referenceLandings, type ReferenceLanding } from './reference-landings.js';

const WARM_UP = 5000;
const SAMPLED_CALLS = 500;
const SAMPLING_BYTES = 64;
const ROUND_SECONDS = 2e-3;
const MEASURE_SECONDS = 1;
const landings = referenceLandings();

function print(line: string): void {
  process.stdout.write(`${line}\n`);
}

/** Time of one call of `work`, s: the best of many short rounds, so that other work on the machine disturbs little. */
function timeOf(work: () => void): number {
  let calls = 1;
  while (roundOf(work, calls) < ROUND_SECONDS) calls *= 2;
  const end = performance.now() + MEASURE_SECONDS * 1e3;
  let best = Infinity;
  do best = Math.min(best, roundOf(work, calls) / calls);
  while (performance.now() < end);
  return best;
}

/** Time of a round of calls, s. */
function roundOf(work: () => void, calls: number): number {
  const start = performance.now();
  for (let i = 0; i < calls; i++) work();
  return (performance.now() - start) / 1e3;
}

const micro = (seconds: number) => `${(seconds * 1e6).toFixed(1).padStart(9)} µs`;
const milli = (seconds: number) => `${(seconds * 1e3).toFixed(1)} ms`;

interface Measured {
  readonly seconds: number;
  readonly travelError: number;
  readonly timeError: number;
}

/** Mean time of a landing over the reference set, and the greatest errors. */
function measure(land: (set: ReferenceLanding) => { travel: number; time: number }): Measured {
  let travelError = 0;
  let timeError = 0;
  for (const set of landings) {
    const { travel, time } = land(set);
    travelError = Math.max(travelError, Math.abs(travel - set.peakTravel));
    timeError = Math.max(timeError, Math.abs(time - set.peakTime));
  }
  const all = timeOf(() => {
    for (const set of landings) land(set);
  });
  return { seconds: all / landings.length, travelError, timeError };
}

function line(name: string, { seconds, travelError, timeError }: Measured, against?: number): void {
  const ratio =
    against === undefined ? '' : `   package takes ${(against / seconds).toFixed(1)} times as long`;
  const rate = `${Math.round(1 / seconds)}/s`.padStart(10);
  const errors = `|Δtravel| ${travelError.toExponential(1)} m, |Δtime| ${timeError.toExponential(1)} s`;
  print(`  ${name.padEnd(34)}${micro(seconds)} ${rate}   ${errors}${ratio}`);
}

/** Bytes that one call allocates, collected or not, by V8's sampling heap profiler. */
function bytesPerCall(work: () => void): number {
  for (let i = 0; i < WARM_UP; i++) work();
  const session = new Session();
  session.connect();
  session.post('HeapProfiler.startSampling', {
    samplingInterval: SAMPLING_BYTES,
    includeObjectsCollectedByMajorGC: true,
    includeObjectsCollectedByMinorGC: true,
  });
  for (let i = 0; i < SAMPLED_CALLS; i++) work();
  let bytes = NaN;
  session.post('HeapProfiler.stopSampling', (error, result) => {
    if (error === null) bytes = sizeOf(result.profile.head);
  });
  session.disconnect();
  return bytes / SAMPLED_CALLS;
}

function sizeOf(node: HeapProfiler.SamplingHeapProfileNode): number {
  return node.children.reduce((sum, child) => sum + sizeOf(child), node.selfSize);
}

/** Returns the time of a landing by the general-purpose package at 1e-6, s. */
function benchLandings(): number {
  print(`Landings: ${landings.length} reference sets, mean of a landing`);
  const generals = [1e-6, 1e-8].map((tolerance) => {
    const general = measure((set) => landWithPackage(set, tolerance));
    const full = measure((set) => {
      const result = landing(set.spring, set.end, set.height, { relativeTolerance: tolerance });
      return { travel: result.peakTravel, time: result.peakTime };
    });
    line(`landing, rtol ${tolerance}`, full, general.seconds);
    line(`odex 2.0.4, tolerance ${tolerance}`, general);
    return general.seconds;
  });
  const travel = timeOf(() => {
    for (const set of landings) travelForHeight(set.spring, set.end, set.height);
  });
  print(`  travel only, rtol 1e-8            ${micro(travel / landings.length)}`);
  const [first] = landings;
  if (first === undefined) throw new Error('no reference landings');
  const bytes = [1e-6, 1e-12].map((relativeTolerance) => {
    const run = () => landing(first.spring, first.end, first.height, { relativeTolerance });
    return `${Math.round(bytesPerCall(run))} bytes for ${run().steps} steps`;
  });
  print(`  allocated by a landing: ${bytes.join(', ')}`);
  return generals[0] ?? NaN;
}

/** A fork and a shock in a frame with a leverage table, from the reference sets. */
function forkAndShock(): { fork: ReferenceLanding; shock: ReferenceLanding; table: SprungEnd } {
  const fork = landings.find(({ label }) => label === 'base h=.3');
  const shock = landings.find(({ label }) => label === 'shock progressive');
  if (fork === undefined || shock === undefined) throw new Error('reference sets missing');
  const stroke = shock.spring.stroke;
  const rows = Array.from({ length: 14 }, (_, i) => {
    const shockTravel = (stroke * i) / 13;
    return { shockTravel, leverageRatio: shock.end.leverage.ratio(shockTravel) };
  });
  return { fork, shock, table: { ...shock.end, leverage: leverageFromTable(rows, stroke) } };
}

function benchHitHeights(): void {
  const { fork, shock, table } = forkAndShock();
  const uncertainty = { gaugeSd: PASCAL_PER_PSI, massSd: 1 };
  print('Hit height behind a ring reading, with its interval');
  for (const [name, set, end] of [
    ['fork', fork, fork.end],
    ['shock with a leverage table', shock, table],
  ] as const) {
    const reading = { travelUsed: 0.8 * set.spring.stroke, readingSd: 0.002 };
    const seconds = timeOf(() => void hitHeight(set.spring, end, reading, uncertainty));
    const general = timeOf(() => void heightWithPackage({ ...set, end }, reading.travelUsed));
    const ratio = (general / seconds).toFixed(1);
    print(
      `  ${name.padEnd(34)}${micro(seconds)}   package, height alone by bisection to 1e-6 m: ${ratio} times as long`,
    );
  }
}

/** The same height through the general-purpose package, without an interval. */
function heightWithPackage(set: ReferenceLanding, travel: number): number {
  let [low, high] = [0, 2];
  while (high - low > 1e-6) {
    const height = (low + high) / 2;
    if (landWithPackage({ ...set, height }, 1e-8).travel < travel) low = height;
    else high = height;
  }
  return high;
}

function benchGrid(packageLanding: number): void {
  const { fork, shock, table } = forkAndShock();
  const spacers = [0, 1, 2, 3, 4, 5];
  const cases = [
    { set: fork, end: fork.end, spacerVolume: 1e-5, from: 40 },
    { set: shock, end: table, spacerVolume: 7e-6, from: 150 },
  ].map(({ set, end, spacerVolume, from }) => ({
    unit: { ...set.spring.unit, spacerVolume, maxSpacers: 5 },
    fill: { ambientPressure: set.spring.fill.ambientPressure, temperature: set.spring.fill.temperature },
    end,
    pressures: Array.from({ length: 60 }, (_, i) => gaugePascalFromPsi(from + i)),
  }));
  const run = () =>
    cases.map(({ unit, fill, end, pressures }) => bottomingGrid(unit, fill, end, spacers, pressures));
  const start = performance.now();
  const grids = run();
  const cold = (performance.now() - start) / 1e3;
  const warm = timeOf(() => void run());
  const cells = grids.reduce((sum, grid) => sum + grid.length, 0);
  print(`Height that bottoms over 6 spacer counts × 60 pressures, fork and shock: ${cells} cells`);
  print(`  warm ${milli(warm)}, first call after this run's other work ${milli(cold)}`);
  const ratio = ((packageLanding * 2 * cells) / warm).toFixed(0);
  print(`  package at two of its landings a cell: ${ratio} times as long`);
}

const packageLanding = benchLandings();
benchHitHeights();
benchGrid(packageLanding);
