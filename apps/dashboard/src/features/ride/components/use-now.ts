import { useEffect, useState } from 'react';

/** The eye cannot follow tenths faster than this, ms. */
const STEP_MS = 100;

/** The moment now, ms; it moves on while `isRunning`. */
export function useNow(isRunning: boolean): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    if (!isRunning) return undefined;
    const ticking = setInterval(() => setNow(Date.now()), STEP_MS);
    return () => clearInterval(ticking);
  }, [isRunning]);
  return now;
}
