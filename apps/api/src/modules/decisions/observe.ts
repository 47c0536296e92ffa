import { bottomOutTails, judgeOutcome, observedLevel, type JudgedOutcome } from '@loamledger/evidence';
import { millimetresFromMetres } from '@loamledger/units';
import type { RunWithReadings } from '../runs/stored-runs.js';
import { ENDS, type End } from '../suspension/end-inputs.js';
import type { ExpectedEnd, Observed, ObservedEnd } from './decision.entity.js';

const PER_CENT = 100;

/** What is known of one run at one end. */
interface EndRun {
  readonly reading: RunWithReadings['readings'][number] | undefined;
  /** null: nobody can say. */
  readonly bottomed: boolean | null;
}

/** What the runs on a set-up showed, held against what was expected of each end. */
export function observe(
  expected: { readonly [end in End]: ExpectedEnd | null } | null,
  ridden: readonly RunWithReadings[],
): Observed {
  const voided = ridden.filter(({ run }) => run.voidedAt !== null).length;
  // A void run may say something about hits, though nothing about time.
  const counting = ridden.filter(({ run }) => run.voidedAt === null || run.readingsCount);
  const ends = ENDS.map((end) => {
    const runs = counting.map((ridden) => endRun(end, ridden));
    const isKnown = runs.some(({ reading, bottomed }) => reading !== undefined || bottomed !== null);
    return expected?.[end] || isKnown ? observedEnd(expected?.[end] ?? null, runs) : null;
  });
  return { runs: ridden.length - voided, voided, fork: ends[0] ?? null, shock: ends[1] ?? null };
}

function endRun(end: End, { run, readings }: RunWithReadings): EndRun {
  const reading = readings.find((candidate) => candidate.end === end);
  const felt = end === 'fork' ? run.forkBottomOuts : run.shockBottomOuts;
  if (reading?.hitKind === 'at-least' || (felt ?? 0) > 0) return { reading, bottomed: true };
  return { reading, bottomed: reading === undefined && felt === null ? null : false };
}

function observedEnd(expected: ExpectedEnd | null, runs: readonly EndRun[]): ObservedEnd {
  const readings = runs.flatMap(({ reading }) => reading ?? []);
  const travels = readings.map(({ travelUsed }) => millimetresFromMetres(travelUsed));
  const known = runs.filter(({ bottomed }) => bottomed !== null);
  const counts = {
    readings: readings.length,
    atLeast: readings.filter(({ hitKind }) => hitKind === 'at-least').length,
    atMost: readings.filter(({ hitKind }) => hitKind === 'at-most').length,
    bottomOutRuns: known.length,
    bottomedRuns: known.filter(({ bottomed }) => bottomed).length,
  };
  return {
    ...counts,
    medianTravelMm: median(travels),
    mostTravelMm: travels.length > 0 ? Math.max(...travels) : null,
    ...held(expected, readings, counts),
  };
}

/** The part of an answer that needs an expectation. */
function held(
  expected: ExpectedEnd | null,
  readings: readonly NonNullable<EndRun['reading']>[],
  { bottomOutRuns, bottomedRuns }: Pick<ObservedEnd, 'bottomOutRuns' | 'bottomedRuns'>,
): Pick<ObservedEnd, 'standardErrors' | 'asManyP' | 'asFewP'> & JudgedOutcome {
  const hit = expected?.hit;
  if (!hit) return { standardErrors: null, asManyP: null, asFewP: null, ...NOTHING_EXPECTED };
  const hits = readings.flatMap(({ hitKind, logHeight, logSd }) =>
    hitKind === null || logHeight === null || logSd === null
      ? []
      : [{ kind: hitKind, logHeight, readingSd: logSd }],
  );
  const level = observedLevel(hit, hits);
  const risk = expected.riskPct;
  const tails = risk === null ? null : bottomOutTails(hit, risk / PER_CENT, bottomedRuns, bottomOutRuns);
  const bottomOuts = { runs: bottomOutRuns, bottomed: bottomedRuns, tails };
  return {
    standardErrors: level.standardErrors,
    asManyP: tails && tails.asMany,
    asFewP: tails && tails.asFew,
    ...judgeOutcome({ readings: hits.length, level, bottomOuts }),
  };
}

const NOTHING_EXPECTED: JudgedOutcome = {
  verdict: 'cannot tell',
  sentence: 'No travel was foretold, so there is nothing to hold it against.',
};

function median(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  const sorted = values.toSorted((a, b) => a - b);
  const low = sorted[Math.floor((sorted.length - 1) / 2)] ?? NaN;
  const high = sorted[Math.floor(sorted.length / 2)] ?? NaN;
  return (low + high) / 2;
}
