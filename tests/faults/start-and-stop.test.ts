import { once } from 'node:events';
import { writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:net';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { childrenOf } from './durable-postgres.js';
import { LASTING_PORTS } from '../../apps/api/scripts/process/ports.mjs';
import { type House, END_LIMIT_MS, isReady, kill, makeHouse, waitUntil } from './house.js';

/** What was committed before a stop of any sort must be there after it. */
const KEEP = 'create table kept as select 42 as value';
const READ = 'select value from kept';
const KEPT = [{ value: 42 }];

let house: House;
beforeEach(async () => {
  house = await makeHouse();
});
afterEach(() => house.clear());

const DATABASE = /^\S*bin\/postgres -D/;
const GUARD = /guard\.sh/;
const SERVICE = /service-entry\.mjs/;
const START = /start\.mjs/;

const pidsOf = (command: RegExp): number[] =>
  house
    .processes()
    .filter((running) => command.test(running.command))
    .map(({ pid }) => pid);

const databaseLog = (): Promise<string> => readFile(join(house.data, 'postgres.log'), 'utf8');

/** Starts the house with `KEEP` committed. */
async function startKeeping() {
  const first = house.start();
  await first.address();
  await house.query(KEEP);
  return first;
}

async function expectKept() {
  const again = house.start();
  expect(await isReady(await again.address())).toBe(true);
  expect(await house.query(READ)).toEqual(KEPT);
}

it('shuts down cleanly on SIGTERM, leaves no process, and has its data at the next start', async () => {
  const first = await startKeeping();
  first.process.kill('SIGTERM');
  expect(await first.ended).toBe(0);
  expect(await house.remaining()).toEqual([]);
  expect(await databaseLog()).toContain('database system is shut down');
  await expectKept();
  expect(await databaseLog()).not.toContain('was not properly shut down');
});

it('shuts down cleanly on Ctrl-C in `npm start`, which reaches npm and the script at once', async () => {
  const first = house.start({ viaNpm: true });
  await first.address();
  process.kill(-Number(first.process.pid), 'SIGINT');
  await first.ended;
  expect(await house.remaining()).toEqual([]);
  expect(await databaseLog()).toContain('database system is shut down');
});

it('shuts down while it is still starting', async () => {
  const first = house.start();
  await waitUntil(() => pidsOf(DATABASE).length > 0, END_LIMIT_MS);
  first.process.kill('SIGTERM');
  expect(await first.ended).toBe(0);
  expect(await house.remaining()).toEqual([]);
  await startKeeping();
});

it('leaves no service and no database behind when the start process is killed', async () => {
  const first = await startKeeping();
  first.process.kill('SIGKILL');
  expect(await house.remaining()).toEqual([]);
  expect(await databaseLog()).toContain('database system is shut down');
  await expectKept();
});

it('leaves nothing behind when npm is killed', async () => {
  const first = house.start({ viaNpm: true });
  await first.address();
  first.process.kill('SIGKILL');
  expect(await house.remaining()).toEqual([]);
});

it('ends a database that outlived its start and the guard, then starts on its data', async () => {
  await startKeeping();
  for (const pid of [...pidsOf(START), ...pidsOf(GUARD)]) kill(pid);
  const [orphan] = pidsOf(DATABASE);
  expect(orphan).toBeDefined();
  // The service ends by itself, and only then is its port to be had.
  await waitUntil(() => pidsOf(SERVICE).length === 0, END_LIMIT_MS);
  await expectKept();
  expect(pidsOf(DATABASE)).toHaveLength(1);
  expect(pidsOf(DATABASE)).not.toContain(orphan);
});

it('recovers what was committed when every process is killed at once', async () => {
  await startKeeping();
  // The database first: who outlives its start by a moment would already be shut down in order.
  for (const pid of pidsOf(DATABASE)) kill(pid);
  for (const { pid } of house.processes()) kill(pid);
  expect(await house.remaining()).toEqual([]);
  await expectKept();
  expect(await databaseLog()).toContain('was not properly shut down');
});

it('waits for the end of what a killed database has left, then starts on its data', async () => {
  await startKeeping();
  const [database = 0] = pidsOf(DATABASE);
  // As one that hangs in a long write to the disk.
  const [left = 0] = childrenOf(database);
  process.kill(left, 'SIGSTOP');
  try {
    for (const pid of [database, ...house.processes().map((one) => one.pid)]) kill(pid);
    expect(await house.remaining()).toEqual([]);
    const again = house.start();
    await waitUntil(async () => (await databaseLog()).includes('is still in use'), END_LIMIT_MS);
    process.kill(left, 'SIGCONT');
    expect(await isReady(await again.address())).toBe(true);
  } finally {
    kill(left);
  }
  expect(await databaseLog()).toContain('is still in use');
  expect(await house.query(READ)).toEqual(KEPT);
});

it('does not take a living program for its database because an old pid file names it', async () => {
  const first = await startKeeping();
  first.process.kill('SIGTERM');
  await house.remaining();
  writeFileSync(join(house.data, 'postgres-15', 'postmaster.pid'), `${process.pid}\n${house.data}\n`);
  await expectKept();
});

it('serves once when started twice at the same time, and says so to the second', async () => {
  const starts = [house.start(), house.start()];
  const second = await Promise.race(starts.map(async (start) => start.ended.then(() => start)));
  expect(second.output()).toContain('already runs');
  expect(await second.ended).toBe(0);
  const first = starts.find((start) => start !== second);
  expect(await isReady((await first?.address()) ?? '')).toBe(true);
  expect(pidsOf(DATABASE)).toHaveLength(1);
});

it('names the address of the running service to a later start', async () => {
  const address = await (await startKeeping()).address();
  const second = house.start();
  expect(await second.ended).toBe(0);
  expect(second.output()).toContain(address);
});

it.each([
  ['database', DATABASE],
  ["database's guard", GUARD],
  ['service', SERVICE],
])('serves again by itself after its %s was killed', async (_what, command) => {
  const address = await (await startKeeping()).address();
  const before = pidsOf(command);
  for (const pid of before) kill(pid);
  await waitUntil(() => pidsOf(command).some((pid) => !before.includes(pid)), END_LIMIT_MS);
  await waitUntil(() => isReady(address), END_LIMIT_MS);
  expect(await isReady(address)).toBe(true);
  expect(await house.query(READ)).toEqual(KEPT);
});

it('has its database at the old address again although another program held its port for a while', async () => {
  const address = await (await startKeeping()).address();
  const { port } = new URL(house.databaseUrl());
  // No connection that goes out gets it between two starts.
  expect(Number(port)).toBeGreaterThanOrEqual(LASTING_PORTS.first);
  expect(Number(port)).toBeLessThanOrEqual(LASTING_PORTS.last);
  for (const pid of pidsOf(DATABASE)) kill(pid);
  const other = createServer();
  // What is left of the killed server may hold the port for a moment.
  await waitUntil(() => listens(other, Number(port)), END_LIMIT_MS);
  await waitUntil(async () => (await databaseLog()).includes('Address already in use'), END_LIMIT_MS);
  other.close();
  await waitUntil(() => isReady(address), END_LIMIT_MS);
  expect(await isReady(address)).toBe(true);
  expect(new URL(house.databaseUrl()).port).toBe(port);
});

const listens = (server: Server, port: number): Promise<boolean> =>
  once(server.listen(port, '127.0.0.1'), 'listening').then(
    () => true,
    () => false,
  );
