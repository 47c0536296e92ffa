import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import { anyFreePort } from '../../apps/api/scripts/process/ports.mjs';
import { type LoadedService, loadService, untilReady } from '../../apps/api/scripts/process/service.mjs';
import { clone, kill } from './house.js';

const HOST = '127.0.0.1';
const START_LIMIT_MS = 60_000;
const runCommand = promisify(execFile);

/** Services on one database, each with an address that it keeps when it is started again. */
export interface SeveralServices {
  readonly addresses: readonly string[];
  /** Kills the service at one address; settles when another serves there. */
  killAndRestart(index: number): Promise<void>;
  /** Asks the service at one address to stop; settles when another serves there. */
  stopAndRestart(index: number): Promise<void>;
  stop(): Promise<void>;
  /** The process that serves at one address. */
  pid(index: number): number;
  /** How those that serve at last have ended, once they have. */
  endings(): Promise<string[]>;
}

/** Brings the database to the newest schema, as every start does. */
export async function migrate(databaseUrl: string): Promise<string> {
  const env = { PATH: process.env['PATH'], DATABASE_URL: databaseUrl };
  const { stdout } = await runCommand(process.execPath, ['apps/api/dist/migrate.js'], { cwd: clone, env });
  return stdout;
}

/** Starts `count` of them, ready to answer, each in a process of its own, as `npm start` makes one. */
export async function startServices(
  databaseUrl: string,
  count: number,
  settings: NodeJS.ProcessEnv = {},
): Promise<SeveralServices> {
  // Loaded beforehand, a killed one is replaced in half the time.
  let spare = loadService();
  const begin = async (port: number): Promise<LoadedService> => {
    const service = spare;
    spare = loadService();
    service.begin({
      NODE_ENV: 'production',
      LOG_LEVEL: 'error',
      DATABASE_URL: databaseUrl,
      HOST,
      PORT: String(port),
      ...settings,
    });
    await untilReady(service, addressOf(port), AbortSignal.timeout(START_LIMIT_MS));
    return service;
  };
  const ports: number[] = [];
  const services: LoadedService[] = [];
  for (let i = 0; i < count; i += 1) {
    const port = await anyFreePort(HOST);
    ports.push(port);
    services.push(await begin(port));
  }
  const replace = async (index: number, end: (service: LoadedService) => unknown): Promise<void> => {
    const [service, port] = [services[index], ports[index]];
    if (!service || port === undefined) throw new Error(`There is no service ${index}.`);
    await end(service);
    await service.ended;
    services[index] = await begin(port);
  };
  return {
    addresses: ports.map(addressOf),
    killAndRestart: (index) => replace(index, ({ pid }) => kill(pid)),
    stopAndRestart: (index) => replace(index, (service) => service.stop()),
    stop: async () => {
      await Promise.all([...services, spare].map((service) => service.stop()));
    },
    pid: (index) => services[index]?.pid ?? 0,
    endings: () => Promise.all(services.map(({ ended }) => ended)),
  };
}

const addressOf = (port: number): string => `http://${HOST}:${port}`;
