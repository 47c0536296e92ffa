import type { BottomOutTails } from './bottom-outs.js';
import type { LevelDifference } from './observed-level.js';

/** What the runs on a set-up say about what was expected of it. */
export type OutcomeVerdict = 'as expected' | 'more travel' | 'less travel' | 'cannot tell';

/** A verdict with its sentence for the reader. */
export interface JudgedOutcome {
  readonly verdict: OutcomeVerdict;
  readonly sentence: string;
}

/** What a verdict is taken from. */
export interface OutcomeBasis {
  /** Runs with a ring reading that counts. */
  readonly readings: number;
  readonly level: LevelDifference;
  /** Runs of which it is known whether they bottomed out, and those that did; tails null: no risk was expected. */
  readonly bottomOuts: {
    readonly runs: number;
    readonly bottomed: number;
    readonly tails: BottomOutTails | null;
  };
}

/** Two standard errors come about once in 22 decisions by chance alone. */
const SURPRISING_ERRORS = 2;
/** The same chance on one side, for counts. */
const SURPRISING_TAIL = 0.025;
/** With fewer readings only a gross difference would have shown (judgement, no source). */
const FEW_READINGS = 3;

/** What the difference says, with a plain sentence; bottom-outs have a sentence of their own beside the travel. */
export function judgeOutcome(basis: OutcomeBasis): JudgedOutcome {
  const travel = judgeTravel(basis);
  const counted = bottomOutSentence(basis);
  return { ...travel, sentence: counted === null ? travel.sentence : `${travel.sentence} ${counted}` };
}

function judgeTravel({ readings, level }: OutcomeBasis): JudgedOutcome {
  if (level.status === 'no readings') {
    return { verdict: 'cannot tell', sentence: 'No ring reading on this set-up yet.' };
  }
  const runs = counted(readings);
  if (level.standardErrors === null) {
    return {
      verdict: 'cannot tell',
      sentence:
        level.status === 'bounds alone'
          ? `${runs}: no reading tells how high the hits were, each is only a bound.`
          : `${runs}: the hits could not be compared with what was expected.`,
    };
  }
  const size = Math.abs(level.standardErrors);
  if (size < SURPRISING_ERRORS) {
    const few = readings < FEW_READINGS ? ', as far as so few can tell' : '';
    return {
      verdict: 'as expected',
      sentence: `${runs}: travel as expected${few} (${errorsWords(level.standardErrors)}).`,
    };
  }
  const verdict = level.standardErrors > 0 ? 'more travel' : 'less travel';
  return {
    verdict,
    sentence: `${runs}: uses ${verdict} than expected: ${size.toFixed(1)} standard errors.`,
  };
}

function bottomOutSentence({ bottomOuts: { runs, bottomed, tails } }: OutcomeBasis): string | null {
  if (tails === null || runs === 0) return null;
  const seen = `${bottomed} of ${counted(runs)} bottomed out`;
  if (tails.asMany < SURPRISING_TAIL) return `${seen}, more than expected.`;
  if (tails.asFew < SURPRISING_TAIL) return `${seen}, fewer than expected.`;
  return bottomed === 0 ? null : `${seen}, within what was expected.`;
}

/** The difference, whichever way it points: below two it is as expected, and how near to two tells a reader when to look again. */
const errorsWords = (errors: number): string => {
  const size = Math.abs(errors).toFixed(1);
  return Number(size) === 0
    ? `${size} standard errors`
    : `${size} standard errors ${errors > 0 ? 'more' : 'less'}`;
};

const counted = (runs: number): string => `${runs} run${runs === 1 ? '' : 's'}`;
