/** Measures the demand model: a refit of a large and of everyday teams against a textbook's likelihood, and one run added. */
import { addReading, fitDemand, type DemandFit, type DemandReading } from '@loamledger/evidence';
import { denseCells, denseLogLikelihood } from './dense-likelihood.js';
import { teamReadings } from './demand-team.js';

const LARGE = { riders: 20, tracks: 30, readings: 10_000 };
const EVERYDAY = [
  { riders: 2, tracks: 3, readings: 10 },
  { riders: 4, tracks: 5, readings: 30 },
  { riders: 6, tracks: 6, readings: 100 },
  { riders: 8, tracks: 8, readings: 300 },
];
const ROUNDS = 7;

function print(line: string): void {
  process.stdout.write(`${line}\n`);
}

interface Taken {
  /** On the clock, ms. */
  wall: number;
  /** Of all of the process's threads, compiling and collecting included, ms. */
  processor: number;
}

function taken(work: () => void): Taken {
  const before = process.cpuUsage();
  const start = performance.now();
  work();
  const wall = performance.now() - start;
  const { user, system } = process.cpuUsage(before);
  return { wall, processor: (user + system) / 1e3 };
}

/** The best of some rounds, so that other work on the machine disturbs little. */
function best(work: () => void): Taken {
  const rounds = Array.from({ length: ROUNDS }, () => taken(work));
  return {
    wall: Math.min(...rounds.map(({ wall }) => wall)),
    processor: Math.min(...rounds.map(({ processor }) => processor)),
  };
}

const milli = (ms: number) => `${ms < 10 ? ms.toFixed(2) : ms.toFixed(0)} ms`;
const both = ({ wall, processor }: Taken) => `${milli(wall)} (processor ${milli(processor)})`;

/** One textbook evaluation at the sds that a fit found. */
function denseEvaluation(readings: readonly DemandReading[], { priors, sds }: DemandFit): Taken {
  const cells = denseCells(readings);
  const at = {
    mu: priors.muSd,
    track: sds.track.mean,
    rider: sds.rider.mean,
    riderOnTrack: sds.riderOnTrack.mean,
    run: sds.run.mean,
  };
  return best(() => {
    if (!Number.isFinite(denseLogLikelihood(cells, priors.muMean, at))) throw new Error('no likelihood');
  });
}

/** Fits are the first thing measured, so that the first call is what a fresh service's first call is. */
function benchLarge(): void {
  const readings = teamReadings(LARGE.riders, LARGE.tracks, LARGE.readings);
  const fitNow = () => void fitDemand(readings);
  const first = taken(fitNow);
  const second = taken(fitNow);
  const third = taken(fitNow);
  const quickest = best(fitNow);
  const fit = fitDemand(readings);
  const { counts } = fit;
  print(
    `Demand refit: ${counts.riders} riders, ${counts.tracks} tracks, ${counts.readings} readings, ${counts.atLeast} of them bounds`,
  );
  print(`  first call ${both(first)}, second ${both(second)}, third ${both(third)}`);
  print(`  best of ${ROUNDS} more ${both(quickest)}, ${counts.posteriorEvaluations} evaluations`);
  const dense = denseEvaluation(readings, fit);
  // By processor time, which other work on the machine hardly changes.
  const one = (quickest.processor / dense.processor).toFixed(1);
  const all = ((dense.processor * counts.posteriorEvaluations) / quickest.processor).toFixed(1);
  print(`  dense likelihood of the cells' exact means, one evaluation ${both(dense)}`);
  print(
    `  by processor time a refit takes ${one} times one of them; as many of them take ${all} times as long as the refit`,
  );
  oneMore(readings, fit);
}

/** One run more, twice: fitted anew with all others, as the service does, and taken into the fit there was. */
function oneMore(readings: readonly DemandReading[], fit: DemandFit): void {
  const added: DemandReading = { ...(readings[0] as DemandReading), kind: 'exact', logHeight: -0.8 };
  const refit = best(() => void fitDemand([...readings, added]));
  print(`       one run more, refitted whole as the service does: ${both(refit)}`);
  const { status } = addReading(fit, added);
  const takenIn = status === 'updated' ? both(best(() => void addReading(fit, added))) : status;
  print(`       one run more, taken into the fit (D12): ${takenIn}`);
}

function benchEveryday(): void {
  print('Demand refit of everyday teams, best of rounds');
  for (const { riders, tracks, readings: count } of EVERYDAY) {
    const readings = teamReadings(riders, tracks, count);
    let evaluations = 0;
    const time = best(() => {
      evaluations = fitDemand(readings).counts.posteriorEvaluations;
    });
    print(`  ${String(count).padStart(4)} readings  ${both(time)}, ${evaluations} evaluations`);
    oneMore(readings, fitDemand(readings));
  }
}

benchLarge();
benchEveryday();
