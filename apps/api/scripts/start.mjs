/**
 * `npm start`: from a fresh clone to a running service, in this order: packages, build, database, migrations,
 * demo team, service. It ends in the opposite order. Settings: docs/operations.md.
 */
import { once } from 'node:events';
import { join } from 'node:path';
import { prepare } from './bootstrap/prepare.mjs';
import { dataHome, root } from './places.mjs';
import { startEmbedded } from './postgres/embedded.mjs';
import { localAddress, networkAddresses } from './process/addresses.mjs';
import { tryLock } from './process/lock.mjs';
import { firstFreePort, isFree } from './process/ports.mjs';
import { run } from './process/run.mjs';
import { loadService, startService, untilReady } from './process/service.mjs';
import { stopSignal } from './process/stop-signal.mjs';
import { supervise } from './process/supervise.mjs';

const DEFAULT_PORT = 4750;
const DEFAULT_HOST = '127.0.0.1';
/** Another start may take the port that we have found free, before our service listens at it. */
const PORT_TRIES = 5;
const signal = stopSignal();

// The database's account passes through our folders; what it may not read has its own mode.
process.umask(0o022);
try {
  if (process.env.DATABASE_URL) await startOnGivenDatabase(process.env.DATABASE_URL);
  else await startOnOwnDatabase(dataHome());
} catch (error) {
  if (!signal.aborted) {
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  }
}

/** @param {string} url */
async function startOnGivenDatabase(url) {
  await prepare(signal);
  await serve(
    () => Promise.resolve({ url, stop: () => Promise.resolve() }),
    () => undefined,
  );
}

/** @param {string} home */
async function startOnOwnDatabase(home) {
  const taken = tryLock(join(home, 'start.lock'));
  if ('heldBy' in taken) {
    const { pid, note } = taken.heldBy;
    console.log(
      `Loamledger already runs on ${home}: process ${pid}, ${note || 'starting'}. Nothing was started.`,
    );
    return;
  }
  try {
    await prepare(signal);
    const openDatabase = async () => {
      const first = await startEmbedded(home);
      return { url: first.url, ...supervise('Postgres', first, () => startEmbedded(home, first.port)) };
    };
    await serve(openDatabase, taken.lock.note);
  } finally {
    taken.lock.release();
  }
}

/**
 * Serves until we are told to stop.
 * @param {() => Promise<{ url: string, stop(): Promise<void> }>} openDatabase
 * @param {(address: string) => void} announce
 */
async function serve(openDatabase, announce) {
  // It loads beside all that comes before it begins.
  const loaded = loadService();
  try {
    const database = await openDatabase();
    try {
      await serveOn(database.url, loaded, announce);
    } finally {
      await database.stop();
    }
  } finally {
    await loaded.stop();
  }
}

/**
 * @param {string} databaseUrl
 * @param {import('./process/service.mjs').LoadedService} loaded
 * @param {(address: string) => void} announce
 */
async function serveOn(databaseUrl, loaded, announce) {
  const host = process.env.HOST || DEFAULT_HOST;
  const common = {
    // The terminal is for the person who started us; requests are told in detail where somebody asks for it.
    LOG_LEVEL: 'warn',
    DASHBOARD_DIR: join(root, 'apps/dashboard/dist'),
    ...process.env,
    DATABASE_URL: databaseUrl,
    HOST: host,
  };
  await run(process.execPath, ['apps/api/dist/migrate.js'], { env: common, signal });
  // Beside the service's beginning: only a first start enters the demo team, later ones read its sign-ins.
  const signIns = run(process.execPath, ['apps/api/dist/seed-demo.js'], {
    env: common,
    signal,
    capture: true,
  });
  // Its failure is told below, where it is awaited.
  signIns.catch(() => undefined);
  const serving = await asServingRole(common);
  const { first, port } = await beginAtFreePort(loaded, host, serving);
  const address = localAddress(host, port);
  const settings = { ...serving, PORT: String(port) };
  const service = supervise('The service', first, () => startService(settings));
  try {
    announce(address);
    console.log(await signIns);
    console.log(`Loamledger runs at ${[address, ...networkAddresses(host, port)].join(' and ')}`);
    console.log('Ctrl-C stops it.');
    if (!signal.aborted) await once(signal, 'abort');
    console.log('Stopping ...');
  } finally {
    await service.stop();
  }
}

/**
 * The settings with the address of the role that serves in the place of the owner's, which the service is never told.
 * @param {NodeJS.ProcessEnv} settings
 * @returns {Promise<NodeJS.ProcessEnv>}
 */
async function asServingRole(settings) {
  const { readConfig } = await import(new URL('../dist/config/config.js', import.meta.url).href);
  return { ...settings, DATABASE_URL: undefined, DATABASE_APP_URL: readConfig(settings).appDatabaseUrl };
}

/**
 * Lets the service serve at a port that was free, or another one at the next, where somebody was faster.
 * @param {import('./process/service.mjs').LoadedService} loaded
 * @param {string} host
 * @param {NodeJS.ProcessEnv} settings
 */
async function beginAtFreePort(loaded, host, settings) {
  let service = loaded;
  for (let tries = 1; ; tries += 1) {
    const port = await choosePort(host);
    service.begin({ ...settings, PORT: String(port) });
    try {
      await untilReady(service, localAddress(host, port), signal);
      return { first: service, port };
    } catch (error) {
      const wasTaken = !signal.aborted && !process.env.PORT && !(await isFree(port, host));
      if (!wasTaken || tries === PORT_TRIES) throw error;
      service = loadService();
    }
  }
}

/** A wanted port is used or refused; without one, the first free one from the default on. @param {string} host */
async function choosePort(host) {
  if (!process.env.PORT) return firstFreePort(DEFAULT_PORT, host);
  const port = Number(process.env.PORT);
  if (!(await isFree(port, host))) {
    throw new Error(`PORT=${process.env.PORT} cannot be listened on at ${host}: is it in use?`);
  }
  return port;
}
