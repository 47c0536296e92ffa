import { randomUUID } from 'node:crypto';
import type { Demo, House } from './house.js';
import { type Call, load } from './load.js';

const WRITERS = 50;
const SECONDS = 10;
const WARM_UP_SECONDS = 2;

/** Fifty phones that log their runs at once, each its next as soon as the one before is acknowledged. */
export async function measureWriters({ address, demo }: House): Promise<void> {
  const options = { connections: WRITERS };
  await load(address, () => logRun(demo), { ...options, seconds: WARM_UP_SECONDS });
  const figures = await load(address, () => logRun(demo), { ...options, seconds: SECONDS });
  console.log(
    `\nLog a run, ${WRITERS} writers: ${figures.perSecond.toFixed(0)}/s, ` +
      `median ${figures.median.toFixed(1)} ms, p95 ${figures.p95.toFixed(1)} ms, p99 ${figures.p99.toFixed(1)} ms`,
  );
}

/** A timed run with a ring reading, as a phone sends it. */
export const logRun = ({ teamPath, cookie, bikeId, trackId }: Demo): Call => ({
  method: 'POST',
  path: `${teamPath}/runs`,
  headers: { cookie, 'content-type': 'application/json', 'idempotency-key': randomUUID() },
  body: JSON.stringify({ bikeId, trackId, day: '2026-05-09', timeS: 187.4, fork: { travelUsedMm: 131 } }),
});
