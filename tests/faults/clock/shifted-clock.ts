import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, closeSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const source = fileURLToPath(new URL('shifted-clock.c', import.meta.url));

/** Why the clock of a house cannot be set here; undefined where it can. Preloading is Linux's, and it has to be compiled. */
export const cannotShift: string | undefined =
  process.platform !== 'linux'
    ? 'needs Linux'
    : spawnSync('cc', ['--version']).status !== 0
      ? 'needs a C compiler, cc'
      : undefined;

/** A clock that a house is started with and that can be set while it runs. */
export interface ShiftedClock {
  /** What a process needs in its environment to go by this clock. */
  readonly env: NodeJS.ProcessEnv;
  /** Sets it to so many seconds before (negative) or after the true time. */
  set(shiftS: number): void;
  remove(): void;
}

export function makeClock(): ShiftedClock {
  const folder = mkdtempSync(join(tmpdir(), 'loamledger-clock-'));
  // The database's account reads both.
  chmodSync(folder, 0o755);
  const library = join(folder, 'shifted-clock.so');
  const file = join(folder, 'shift');
  execFileSync('cc', ['-shared', '-fPIC', '-O2', '-o', library, source, '-ldl']);
  const set = (shiftS: number): void => {
    const shift = Buffer.alloc(8);
    shift.writeBigInt64LE(BigInt(shiftS));
    // In place: the processes share the pages of this very file.
    const open = openSync(file, 'r+');
    writeSync(open, shift, 0, shift.length, 0);
    closeSync(open);
  };
  closeSync(openSync(file, 'w'));
  set(0);
  return {
    env: { LD_PRELOAD: library, CLOCK_SHIFT_FILE: file },
    set,
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
