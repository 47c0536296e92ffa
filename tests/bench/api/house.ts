import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startEmbedded } from '../../../apps/api/scripts/postgres/embedded.mjs';
import { localAddress } from '../../../apps/api/scripts/process/addresses.mjs';
import { anyFreePort } from '../../../apps/api/scripts/process/ports.mjs';
import { run } from '../../../apps/api/scripts/process/run.mjs';
import { startService, untilReady } from '../../../apps/api/scripts/process/service.mjs';

export const HOST = '127.0.0.1';
const START_LIMIT_MS = 60_000;

/** The demo team as a signed-in mechanic sees it. */
export interface Demo {
  readonly teamId: string;
  readonly teamPath: string;
  readonly cookie: string;
  readonly trackId: string;
  readonly bikeId: string;
}

/** A durable Postgres and the service, in processes of their own, with the demo team in them. */
export interface House {
  readonly address: string;
  /** What the service was started with. */
  readonly settings: NodeJS.ProcessEnv;
  readonly databaseUrl: string;
  readonly servicePid: number;
  readonly demo: Demo;
  stop(): Promise<void>;
}

export async function openHouse(): Promise<House> {
  const home = await mkdtemp(join(tmpdir(), 'loamledger-bench-'));
  const database = await startEmbedded(home);
  const closeDatabase = async () => {
    await database.stop();
    await rm(home, { recursive: true });
  };
  try {
    const port = await anyFreePort(HOST);
    const address = localAddress(HOST, port);
    const settings = {
      ...process.env,
      NODE_ENV: 'production',
      LOG_LEVEL: 'warn',
      DATABASE_URL: database.url,
      HOST,
      PORT: String(port),
    };
    await run(process.execPath, ['apps/api/dist/migrate.js'], { env: settings, capture: true });
    const signIns = await run(process.execPath, ['apps/api/dist/seed-demo.js'], {
      env: settings,
      capture: true,
    });
    const service = startService(settings);
    const stop = async () => {
      await service.stop();
      await closeDatabase();
    };
    try {
      await untilReady(service, address, AbortSignal.timeout(START_LIMIT_MS));
      const demo = await signIn(address, signIns);
      return { address, settings, databaseUrl: database.url, servicePid: service.pid, demo, stop };
    } catch (error) {
      await service.stop();
      throw error;
    }
  } catch (error) {
    await closeDatabase();
    throw error;
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
  const teamId = memberships[0]?.teamId ?? '';
  const teamPath = `/api/v1/teams/${teamId}`;
  const firstOf = async (things: string): Promise<string> => {
    const list = await fetch(`${address}${teamPath}/${things}?limit=1`, { headers: { cookie } });
    const { items } = (await list.json()) as { items: { id: string }[] };
    return items[0]?.id ?? '';
  };
  return { teamId, teamPath, cookie, trackId: await firstOf('tracks'), bikeId: await firstOf('bikes') };
}
