import { allowedSetUps } from '../fork-end.js';
import type { Adviser, LoggedRun, SetUp, TeamRecords } from '../contract.js';
import { expectedImprovement } from './expected-improvement.js';
import { gaussianProcess, type Kernel, type Process } from './gaussian-process.js';
import { HARD_BEYOND_USUAL } from './hard-runs.js';

/** Values are counted in this, m, so that a function of the order of 1 is sought. */
const VALUE_SCALE = 0.01;
/** Kernels tried; of these the one that the values are likeliest under is taken. */
const SIGNAL_SDS = [0.5, 1, 2] as const;
const LENGTHS = [0.15, 0.3, 0.6, 1.2] as const;
const NOISE_SDS = [0.3, 0.6, 1] as const;
const KERNELS: readonly Kernel[] = SIGNAL_SDS.flatMap((signalSd) =>
  LENGTHS.flatMap((length) => NOISE_SDS.map((noiseSd) => ({ signalSd, length, noiseSd }))),
);

/**
 * A textbook optimiser, knowing nothing of springs: it looks for the set-up whose ring is least off the reserve wanted,
 * rides where improvement is most to be expected, and holds that to be best whose expected miss is least.
 */
export function optimiser(records: TeamRecords, wantedReserve: number): Adviser {
  const fork = records.forks.get(records.riderId);
  const altitude = records.altitudes.get(records.trackId);
  if (!fork || altitude === undefined) throw new Error('neither fork nor track in the records');
  const allowed = allowedSetUps(fork, altitude);
  const pressures = allowed.map(({ pressure }) => pressure);
  const lowest = Math.min(...pressures);
  const range = Math.max(1, Math.max(...pressures) - lowest);
  const point = ({ pressure, spacers }: SetUp): number[] => [
    (pressure - lowest) / range,
    spacers / Math.max(1, fork.maxSpacers),
  ];
  const missOf = ({ travelUsed }: LoggedRun): number =>
    Math.abs(fork.unit.stroke - travelUsed - wantedReserve - HARD_BEYOND_USUAL) / VALUE_SCALE;

  return (logged) => {
    const runs = logged.filter(({ riderId }) => riderId === records.riderId);
    if (runs.length === 0) return { next: records.startSetUp, best: records.startSetUp };
    const values = runs.map(missOf);
    const centre = values.reduce((sum, value) => sum + value, 0) / values.length;
    const process = likeliest(
      runs.map(({ setUp }) => point(setUp)),
      values.map((value) => value - centre),
    );
    const seen = allowed.map((setUp) => ({ setUp, ...process.at(point(setUp)) }));
    const ridden = runs.map(({ setUp }) => process.at(point(setUp)).mean);
    const least = Math.min(...ridden);
    return {
      next: greatest(seen, (candidate) => expectedImprovement(candidate, least))?.setUp ?? records.startSetUp,
      best: greatest(seen, ({ mean }) => -mean)?.setUp ?? records.startSetUp,
    };
  };
}

function likeliest(points: readonly (readonly number[])[], values: readonly number[]): Process {
  const processes = KERNELS.map((kernel) => gaussianProcess(points, values, kernel));
  return greatest(processes, ({ logLikelihood }) => logLikelihood) as Process;
}

function greatest<T>(items: readonly T[], score: (item: T) => number): T | undefined {
  const scored = items.map((item) => ({ item, score: score(item) }));
  return scored.toSorted((a, b) => b.score - a.score)[0]?.item;
}
