import { fileURLToPath } from 'node:url';
import { anyFreePort } from '../../apps/api/scripts/process/ports.mjs';
import { startService, untilReady } from '../../apps/api/scripts/process/service.mjs';
import type { TestDatabase } from './database.js';

const HOST = '127.0.0.1';
const START_LIMIT_MS = 30_000;

export interface TestService {
  /** Where API and dashboard are served, such as `http://127.0.0.1:40000`. */
  readonly address: string;
  stop(): Promise<void>;
}

/** The built service with the built dashboard, in a process of its own, on a test's database. */
export async function startTestService(database: TestDatabase): Promise<TestService> {
  const port = await anyFreePort(HOST);
  const address = `http://${HOST}:${port}`;
  const env = {
    PATH: process.env['PATH'],
    NODE_ENV: 'production',
    LOG_LEVEL: 'warn',
    DASHBOARD_DIR: fileURLToPath(new URL('../../apps/dashboard/dist', import.meta.url)),
    DATABASE_URL: database.ownerUrl,
    HOST,
    PORT: String(port),
  };
  const service = startService(env);
  await untilReady(service, address, AbortSignal.timeout(START_LIMIT_MS));
  return { address, stop: service.stop };
}
