/** Measures the service with the demo team on a durable Postgres, all three on this machine: throughput and times. */
import { randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startEmbedded } from '../../apps/api/scripts/postgres/embedded.mjs';
import { localAddress } from '../../apps/api/scripts/process/addresses.mjs';
import { anyFreePort } from '../../apps/api/scripts/process/ports.mjs';
import { run } from '../../apps/api/scripts/process/run.mjs';
import { startService, untilReady } from '../../apps/api/scripts/process/service.mjs';
import { type Call, load } from './load.js';

const HOST = '127.0.0.1';
const CONNECTIONS = 10;
const SECONDS = 5;
const WARM_UP_SECONDS = 1;
const START_LIMIT_MS = 60_000;

interface Demo {
  readonly teamPath: string;
  readonly cookie: string;
  readonly trackId: string;
  readonly bikeId: string;
}

const home = await mkdtemp(join(tmpdir(), 'loamledger-bench-'));
const database = await startEmbedded(home);
try {
  const port = await anyFreePort(HOST);
  const address = localAddress(HOST, port);
  const env = {
    ...process.env,
    NODE_ENV: 'production',
    LOG_LEVEL: 'warn',
    DATABASE_URL: database.url,
    HOST,
    PORT: String(port),
  };
  await run(process.execPath, ['apps/api/dist/migrate.js'], { env, capture: true });
  const signIns = await run(process.execPath, ['apps/api/dist/seed-demo.js'], { env, capture: true });
  const service = startService(env);
  try {
    await untilReady(service, address, AbortSignal.timeout(START_LIMIT_MS));
    await measure(address, await signIn(address, signIns));
  } finally {
    await service.stop();
  }
} finally {
  await database.stop();
  await rm(home, { recursive: true });
}

async function measure(address: string, { teamPath, cookie, trackId, bikeId }: Demo): Promise<void> {
  const get = (path: string) => (): Call => ({ method: 'GET', path, headers: { cookie } });
  const logRun = (): Call => ({
    method: 'POST',
    path: `${teamPath}/runs`,
    headers: { cookie, 'content-type': 'application/json', 'idempotency-key': randomUUID() },
    body: JSON.stringify({ bikeId, trackId, day: '2026-05-09', timeS: 187.4 }),
  });
  const calls: readonly [name: string, next: () => Call][] = [
    ['is it ready?', get('/api/v1/health/ready')],
    ['the bikes', get(`${teamPath}/bikes`)],
    ['50 runs of a track', get(`${teamPath}/runs?trackId=${trackId}&limit=50`)],
    ['a track’s baselines', get(`${teamPath}/baselines?trackId=${trackId}`)],
    ['log a run', logRun],
  ];
  console.log(`${CONNECTIONS} connections, ${SECONDS} s each      requests/s   median     p95     p99 (ms)`);
  for (const [name, next] of calls) {
    await load(address, next, { connections: CONNECTIONS, seconds: WARM_UP_SECONDS });
    const { perSecond, ...times } = await load(address, next, { connections: CONNECTIONS, seconds: SECONDS });
    const columns = Object.values(times).map((time) => time.toFixed(1).padStart(8));
    console.log(`${name.padEnd(32)} ${perSecond.toFixed(0).padStart(9)} ${columns.join('')}`);
  }
}

/** Signs in as the first of the printed demo sign-ins. */
async function signIn(address: string, signIns: string): Promise<Demo> {
  const [, email, password] = /(\S+@\S+)\s+(\S+)/.exec(signIns) ?? [];
  const answer = await fetch(`${address}/api/v1/sign-ins`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ email, password }),
  });
  const cookie = answer.headers.get('set-cookie')?.split(';')[0] ?? '';
  const { memberships } = (await answer.json()) as { memberships: { teamId: string }[] };
  const teamPath = `/api/v1/teams/${memberships[0]?.teamId ?? ''}`;
  const firstOf = async (things: string): Promise<string> => {
    const list = await fetch(`${address}${teamPath}/${things}?limit=1`, { headers: { cookie } });
    const { items } = (await list.json()) as { items: { id: string }[] };
    return items[0]?.id ?? '';
  };
  return { teamPath, cookie, trackId: await firstOf('tracks'), bikeId: await firstOf('bikes') };
}
