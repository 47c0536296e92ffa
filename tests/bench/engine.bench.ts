/** Measures the spring engine: landings, hit heights, a whole grid; against a general-purpose package in the same run. */
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import {
  airSpring,
  bottomingGrid,
  hitHeight,
  landing,
  leverageFromTable,
  travelForHeight,
  type SprungEnd,
} from '@loamledger/spring';
import { gaugePascal, gaugePascalFromPsi, PASCAL_PER_PSI } from '@loamledger/units';
import { landWithPackage } from './general-package.js';
import { referenceLandings, type ReferenceLanding } from './reference-landings.js';

const BEST_OF = 7;
const landings = referenceLandings();

function print(line: string): void {
  process.stdout.write(`${line}\n`);
}

/** Best time of one call of `work`, s; `calls` of them are timed together. */
function timeOf(calls: number, work: () => void): number {
  let best = Infinity;
  for (let i = 0; i < BEST_OF; i++) {
    const start = performance.now();
    for (let k = 0; k < calls; k++) work();
    best = Math.min(best, (performance.now() - start) / calls / 1e3);
  }
  return best;
}

const micro = (seconds: number) => `${(seconds * 1e6).toFixed(1).padStart(9)} µs`;
const milli = (seconds: number) => `${(seconds * 1e3).toFixed(1)} ms`;

interface Measured {
  readonly seconds: number;
  readonly travelError: number;
  readonly timeError: number;
}

/** Mean time of a landing over the reference set, and the greatest errors. */
function measure(calls: number, land: (set: ReferenceLanding) => { travel: number; time: number }): Measured {
  let travelError = 0;
  let timeError = 0;
  for (const set of landings) {
    const { travel, time } = land(set);
    travelError = Math.max(travelError, Math.abs(travel - set.peakTravel));
    timeError = Math.max(timeError, Math.abs(time - set.peakTime));
  }
  const all = timeOf(calls, () => {
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

/** Bytes of heap that one call leaves to collect, over calls between two collections. */
function bytesPerCall(calls: number, work: () => void): number {
  setFlagsFromString('--expose-gc');
  const collect = runInNewContext('gc') as () => void;
  work();
  collect();
  const before = process.memoryUsage().heapUsed;
  for (let i = 0; i < calls; i++) work();
  return (process.memoryUsage().heapUsed - before) / calls;
}

function benchLandings(): void {
  print(`Landings: ${landings.length} reference sets, mean of a landing, best of ${BEST_OF}`);
  for (const tolerance of [1e-6, 1e-8]) {
    const general = measure(3, (set) => landWithPackage(set, tolerance));
    const full = measure(300, (set) => {
      const result = landing(set.spring, set.end, set.height, { relativeTolerance: tolerance });
      return { travel: result.peakTravel, time: result.peakTime };
    });
    line(`landing, rtol ${tolerance}`, full, general.seconds);
    line(`odex 2.0.4, tolerance ${tolerance}`, general);
  }
  const travel = timeOf(300, () => {
    for (const set of landings) travelForHeight(set.spring, set.end, set.height);
  });
  print(`  travel only, rtol 1e-8            ${micro(travel / landings.length)}`);
  const [first] = landings;
  if (first === undefined) throw new Error('no reference landings');
  const bytes = bytesPerCall(200, () => void landing(first.spring, first.end, first.height));
  print(`  heap per landing call: ${Math.round(bytes)} bytes, the same for any number of steps`);
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
    const seconds = timeOf(200, () => void hitHeight(set.spring, end, reading, uncertainty));
    const general = timeOf(2, () => void heightWithPackage({ ...set, end }, reading.travelUsed));
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

function benchGrid(): void {
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
  const warm = timeOf(3, () => void run());
  const cells = grids.reduce((sum, grid) => sum + grid.length, 0);
  const general = timeOf(1, () => {
    for (const { unit, fill, end, pressures } of cases) {
      const spring = airSpring(unit, { ...fill, spacers: 0, gaugePressure: gaugePascal(pressures[0] ?? 0) });
      heightWithPackage({ ...fork, spring, end }, spring.stroke * (1 - 1e-9));
    }
  });
  print(`Height that bottoms over 6 spacer counts × 60 pressures, fork and shock: ${cells} cells`);
  print(`  warm ${milli(warm)}, first call after this run's other work ${milli(cold)}`);
  print(
    `  package, extrapolated from two cells by bisection to 1e-6 m: ${((general * cells) / 2 / warm).toFixed(0)} times as long`,
  );
}

benchLandings();
benchHitHeights();
benchGrid();
