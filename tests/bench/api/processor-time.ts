import { readFileSync } from 'node:fs';

/** Linux counts in hundredths of a second for every program (`man 5 proc`, USER_HZ). */
const MS_PER_TICK = 10;

/**
 * Processor time that a process with all its threads has taken so far, ms; NaN where the system does not tell. Unlike a
 * rate it hardly depends on what else the machine does.
 */
export function processorMs(pid: number | undefined): number {
  try {
    const text = readFileSync(`/proc/${pid}/stat`, 'utf8');
    // After the command's name, which may hold spaces: state is the first field, the two times are the 12th and 13th.
    const fields = text.slice(text.lastIndexOf(')') + 2).split(' ');
    return (Number(fields[11]) + Number(fields[12])) * MS_PER_TICK;
  } catch {
    return NaN;
  }
}
