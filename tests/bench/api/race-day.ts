import { readFileSync } from 'node:fs';
import type { Demo, House } from './house.js';
import { type Call, type Figures, load, pacedLoad } from './load.js';
import { logRun } from './writers.js';

const CONNECTIONS = 20;
const FULL_SECONDS = 15;
/** Between two requests of one person who looks and logs all the time. */
const EVERY_MS = 2_000;
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

/**
 * The mix of a race day: first as much of it as the service can take, then at the pace of people, with the memory that
 * the service holds as the day goes on.
 */
export async function measureRaceDay({ address, demo, servicePid }: House): Promise<void> {
  const turns = MIX.flatMap(([share, call]) => Array<typeof call>(share).fill(call));
  let turn = 0;
  // A step that shares no factor with 100 visits every place before it comes to one again.
  const next = () => {
    turn = (turn + 37) % turns.length;
    return (turns[turn] ?? logRun)(demo);
  };
  const tell = (when: string, { perSecond, median, p95, p99 }: Figures) => {
    const times = [median, p95, p99].map((time) => time.toFixed(1).padStart(8));
    const memory = residentMib(servicePid).toFixed(0);
    console.log(`${when.padEnd(38)}${perSecond.toFixed(0).padStart(10)}${times.join('')}   ${memory} MiB`);
  };
  console.log(
    `\nRace day, ${CONNECTIONS} connections                requests/s   median     p95     p99 (ms)   memory`,
  );
  tell('as fast as it goes', await load(address, next, { connections: CONNECTIONS, seconds: FULL_SECONDS }));
  const pace = { connections: CONNECTIONS, seconds: SECONDS / PARTS, everyMs: EVERY_MS };
  for (let part = 1; part <= PARTS; part += 1) {
    const figures = await pacedLoad(address, next, pace);
    tell(`each every ${EVERY_MS / 1e3} s, after ${Math.round((part * SECONDS) / PARTS)} s`, figures);
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
