import { readFileSync } from 'node:fs';
import type { Demo, House } from './house.js';
import { type Call, load } from './load.js';
import { logRun } from './writers.js';

const CONNECTIONS = 20;
/** BENCH_DAY_SECONDS=3600 is the hour that the figures in the guide are of. */
const SECONDS = Number(process.env['BENCH_DAY_SECONDS'] ?? 60);
const PARTS = 6;

/** What a race day asks, in shares of a hundred: phones look and log, the pit looks on, the coach compares now and then. */
const MIX: readonly [share: number, call: (demo: Demo) => Call][] = [
  [45, (demo) => get(demo, `/setups?bikeId=${demo.bikeId}&limit=2`)],
  [20, (demo) => get(demo, '/bikes')],
  [15, (demo) => get(demo, `/runs?bikeId=${demo.bikeId}&limit=20`)],
  [10, (demo) => get(demo, '/tracks')],
  [9, logRun],
  [1, (demo) => get(demo, `/baselines?trackId=${demo.trackId}`)],
];

/** The mix of a race day: rates, times, and the memory that the service holds as it goes on. */
export async function measureRaceDay({ address, demo, servicePid }: House): Promise<void> {
  const turns = MIX.flatMap(([share, call]) => Array<typeof call>(share).fill(call));
  let turn = 0;
  // A step that shares no factor with 100 visits every place before it comes to one again.
  const next = () => {
    turn = (turn + 37) % turns.length;
    return (turns[turn] ?? logRun)(demo);
  };
  console.log(
    `\nRace day, ${CONNECTIONS} connections, ${SECONDS} s      requests/s   median     p95     p99 (ms)   memory`,
  );
  for (let part = 1; part <= PARTS; part += 1) {
    const figures = await load(address, next, { connections: CONNECTIONS, seconds: SECONDS / PARTS });
    const times = [figures.median, figures.p95, figures.p99].map((time) => time.toFixed(1).padStart(8));
    console.log(
      `after ${String(Math.round((part * SECONDS) / PARTS)).padStart(4)} s`.padEnd(38) +
        `${figures.perSecond.toFixed(0).padStart(10)}${times.join('')}   ${residentMib(servicePid).toFixed(0)} MiB`,
    );
  }
}

const get = ({ teamPath, cookie }: Demo, path: string): Call => ({
  method: 'GET',
  path: `${teamPath}${path}`,
  headers: { cookie },
});

/** Resident memory of a process, MiB; NaN where the system does not tell. */
function residentMib(pid: number): number {
  try {
    const [, kib] = /^VmRSS:\s+(\d+) kB$/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8')) ?? [];
    return Number(kib) / 1024;
  } catch {
    return NaN;
  }
}
