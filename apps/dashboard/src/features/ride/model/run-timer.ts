/** A run under way or just ended, as moments on the clock: a locked screen or a reload stops nothing. */
export interface RunTimer {
  /** ms since 1970. */
  readonly startedAt: number;
  readonly stoppedAt: number | null;
  /** When the sections ended that were passed so far, in riding order. */
  readonly marks: readonly number[];
}

const NAME = 'loamledger.run-timer';
/** Nobody rides one run for longer; a timer that was forgotten is not offered any more. */
const FORGOTTEN_AFTER_MS = 7_200_000;

function parse(text: string | null): RunTimer | null {
  if (text === null) return null;
  const { startedAt, stoppedAt, marks = [] } = JSON.parse(text) as Partial<RunTimer>;
  if (typeof startedAt !== 'number') return null;
  return { startedAt, stoppedAt: typeof stoppedAt === 'number' ? stoppedAt : null, marks };
}

/** The timer of this device. Written at once and without waiting, unlike a database: the screen may lock any moment. */
export const runTimer = {
  read(now: number): RunTimer | null {
    const timer = parse(localStorage.getItem(NAME));
    return timer !== null && now - timer.startedAt < FORGOTTEN_AFTER_MS ? timer : null;
  },
  write(timer: RunTimer): void {
    localStorage.setItem(NAME, JSON.stringify(timer));
  },
  start(now: number): RunTimer {
    const timer = { startedAt: now, stoppedAt: null, marks: [] };
    runTimer.write(timer);
    return timer;
  },
  clear(): void {
    localStorage.removeItem(NAME);
  },
};

const MS = 1_000;

/** Time of the run so far, s. */
export const elapsedS = ({ startedAt, stoppedAt }: Omit<RunTimer, 'marks'>, now: number): number =>
  Math.max(0, (stoppedAt ?? now) - startedAt) / MS;

const TENTH_MS = 100;

/**
 * Times of the sections whose ends were marked, s to a tenth, in riding order; the last section ends where the run does.
 * Ends are rounded, not lengths, so that sections never add up to more than the run. Without a mark there are none, and
 * neither where more were marked than the track has: another was chosen while the timer ran.
 */
export function sectionTimesS({ startedAt, stoppedAt, marks }: RunTimer, sections: number): number[] {
  if (marks.length === 0 || marks.length >= sections) return [];
  const ends = [...marks, ...(marks.length === sections - 1 && stoppedAt !== null ? [stoppedAt] : [])];
  const tenths = [startedAt, ...ends].map((moment) => Math.round((moment - startedAt) / TENTH_MS));
  return tenths.slice(1).map((end, i) => Math.max(0, end - (tenths[i] as number)) / 10);
}
