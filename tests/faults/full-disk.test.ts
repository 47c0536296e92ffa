import { execFileSync, spawnSync } from 'node:child_process';
import { appendFileSync, chmodSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { foundTeam, SETUP, type TestTeam } from '../api/support/team.js';
import { isReady, makeHouse, type House, waitUntil } from './house.js';
import { expectUnavailable } from './unavailable.js';
import { marksOf, startWriters, storedMarks } from './stubborn-writers.js';

const DISK_MIB = 160;
const WRITERS = 4;
const ENOUGH_WRITES = 40;
const LIMIT_MS = 60_000;

const folder = mkdtempSync(join(tmpdir(), 'loamledger-small-disk-'));
const disk = join(folder, 'disk');
mkdirSync(disk);
/** A disk of its own that is small: a file system in memory, which only root may mount, and not in every container. */
const isMounted =
  process.platform === 'linux' &&
  spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${DISK_MIB}m,mode=755`, 'tmpfs', disk]).status === 0;

describe.runIf(isMounted)('a full disk (needs the right to mount one)', () => {
  let house: House;
  let team: TestTeam;
  let address: string;
  beforeAll(async () => {
    chmodSync(folder, 0o755);
    house = await makeHouse(join(disk, 'data'));
    address = await house.start().address();
    team = await foundTeam({ url: `${address}/api/v1` });
    await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: team.bike.id }).expect(201);
  });
  afterAll(async () => {
    await house.clear();
    execFileSync('umount', [disk]);
    rmSync(folder, { recursive: true });
  });

  it('is answered with 503, and no acknowledged write is lost or doubled once there is room again', async () => {
    const writers = startWriters(team, [address], WRITERS);
    await waitUntil(() => writers.acknowledged.length >= ENOUGH_WRITES, LIMIT_MS);
    const ballast = join(disk, 'ballast');
    // Somebody else's files take all that is left; Postgres wants more for its log soon.
    fill(ballast);
    await house.query('select pg_switch_wal()').catch(() => undefined);
    const stuck = await isStuck(() => writers.acknowledged.length);
    // A try may find Postgres starting anew, or break with its connection: sooner or later the disk itself is the answer.
    let told = 0;
    await waitUntil(async () => {
      const answer = await team.mechanic.post(`${team.path}/tracks`, { name: 'No room', altitudeM: 10 });
      if (answer.status === 503) expectUnavailable(answer);
      return (told = answer.status) === 503;
    }, LIMIT_MS);
    rmSync(ballast);
    expect(stuck).toBe(true);
    expect(told).toBe(503);
    const before = writers.acknowledged.length;
    await waitUntil(() => writers.acknowledged.length > before + ENOUGH_WRITES, LIMIT_MS);
    await writers.stop();
    expect(writers.wrong).toEqual([]);
    expect(writers.acknowledged.length).toBeGreaterThan(before + ENOUGH_WRITES);
    expect(await isReady(address)).toBe(true);
    expect(await storedMarks((statement) => house.query(statement))).toEqual(
      writers.acknowledged.flatMap(marksOf).toSorted(),
    );
  });
});

/** Writes a file until there is no room left. */
function fill(file: string): void {
  const part = Buffer.alloc(64 * 1024);
  for (;;) {
    try {
      appendFileSync(file, part);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ENOSPC') return;
      throw error;
    }
  }
}

/** Whether a number stops growing for a while. */
async function isStuck(count: () => number): Promise<boolean> {
  const QUIET_MS = 3_000;
  let last = count();
  let since = Date.now();
  await waitUntil(() => {
    if (count() !== last) [last, since] = [count(), Date.now()];
    return Date.now() - since > QUIET_MS;
  }, LIMIT_MS);
  return Date.now() - since > QUIET_MS;
}

it.runIf(!isMounted)('cannot be tried here: no file system may be mounted', ({ skip }) => {
  rmSync(folder, { recursive: true });
  skip('mounting a small disk needs root on Linux, with the right to mount');
});
