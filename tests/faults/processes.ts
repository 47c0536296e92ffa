import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, readdirSync } from 'node:fs';

export interface RunningProcess {
  readonly pid: number;
  readonly command: string;
}

/** Every process that was started with `setting` (`NAME=value`) in its environment: all that belongs to one house. */
export function processesWith(setting: string): RunningProcess[] {
  const all = existsSync('/proc/self/environ') ? fromProc() : fromPs();
  return all.filter(({ environment }) => environment.includes(setting));
}

/** CPU time that the first thread of a process has had so far, ms: in a service the one that answers. */
export const firstThreadMs = (pid: number): number =>
  Number(readFileSync(`/proc/${pid}/schedstat`, 'utf8').split(' ', 1)[0]) / 1e6;

type Listed = RunningProcess & { readonly environment: string };

function fromProc(): Listed[] {
  return readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .map((name) => ({
      pid: Number(name),
      command: read(`/proc/${name}/cmdline`),
      environment: read(`/proc/${name}/environ`),
    }));
}

function fromPs(): Listed[] {
  const table = execFileSync('ps', ['eww', '-A', '-o', 'pid=,command='], { encoding: 'utf8' });
  return table.split('\n').map((line) => ({ pid: parseInt(line, 10), command: line, environment: line }));
}

/** Empty for a process that has just ended. */
function read(file: string): string {
  try {
    return readFileSync(file, 'utf8').replaceAll('\0', ' ');
  } catch {
    return '';
  }
}
