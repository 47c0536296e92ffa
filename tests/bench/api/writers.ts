import { randomUUID } from 'node:crypto';
import type { Demo, House } from './house.js';
import { type Call, type Figures, load, pacedLoad } from './load.js';
import { processorMs } from './processor-time.js';

const WRITERS = 50;
/** Between two runs of one phone. */
const EVERY_MS = 2_000;
const SECONDS = 10;
const WARM_UP_SECONDS = 2;

/**
 * Fifty phones of one team that log on one track on one day: each a run every two seconds, which is far more than people
 * ride; then each its next as soon as the one before is acknowledged, which is all that the service can take.
 */
export async function measureWriters({ address, demo, servicePid }: House): Promise<void> {
  const options = { connections: WRITERS };
  await load(address, () => logRun(demo), { ...options, seconds: WARM_UP_SECONDS });
  const paced = await pacedLoad(address, () => logRun(demo), {
    ...options,
    seconds: SECONDS,
    everyMs: EVERY_MS,
  });
  console.log(told(`\nLog a run, ${WRITERS} writers, each every ${EVERY_MS / 1e3} s`, paced));
  const before = processorMs(servicePid);
  const figures = await load(address, () => logRun(demo), { ...options, seconds: SECONDS });
  const each = (processorMs(servicePid) - before) / figures.count;
  console.log(told(`Log a run, ${WRITERS} writers without a pause`, figures));
  console.log(`Processor time of the service for one run: ${each.toFixed(1)} ms`);
}

const told = (what: string, { perSecond, median, p95, p99 }: Figures): string =>
  `${what}: ${perSecond.toFixed(0)}/s, ` +
  `median ${median.toFixed(1)} ms, p95 ${p95.toFixed(1)} ms, p99 ${p99.toFixed(1)} ms`;

/** A timed run with a ring reading, as a phone sends it. */
export const logRun = ({ teamPath, cookie, bikeId, trackId }: Demo): Call => ({
  method: 'POST',
  path: `${teamPath}/runs`,
  headers: { cookie, 'content-type': 'application/json', 'idempotency-key': randomUUID() },
  body: JSON.stringify({ bikeId, trackId, day: '2026-05-09', timeS: 187.4, fork: { travelUsedMm: 131 } }),
});
