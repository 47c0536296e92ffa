/** A run under way or just ended, as moments on the clock: a locked screen or a reload stops nothing. */
export interface RunTimer {
  /** ms since 1970. */
  readonly startedAt: number;
  readonly stoppedAt: number | null;
}

const NAME = 'loamledger.run-timer';
/** Nobody rides one run for longer; a timer that was forgotten is not offered any more. */
const FORGOTTEN_AFTER_MS = 7_200_000;

function parse(text: string | null): RunTimer | null {
  if (text === null) return null;
  const { startedAt, stoppedAt } = JSON.parse(text) as Partial<RunTimer>;
  if (typeof startedAt !== 'number') return null;
  return { startedAt, stoppedAt: typeof stoppedAt === 'number' ? stoppedAt : null };
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
  clear(): void {
    localStorage.removeItem(NAME);
  },
};

const MS = 1_000;

/** Time of the run so far, s. */
export const elapsedS = ({ startedAt, stoppedAt }: RunTimer, now: number): number =>
  Math.max(0, (stoppedAt ?? now) - startedAt) / MS;
