import { execFile, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { signInToDemo } from './demo-sign-in.js';
import { type House, makeHouse } from './house.js';
import { contentsOf } from './whole-contents.js';

/** The commands are those of docs/operations.md. */
const runCommand = promisify(execFile);
const hasClientPrograms = spawnSync('pg_dump', ['--version']).status === 0;

/** So that there is something in every table. */
const withDemo = { DEMO_TEAM: 'true' };

let original: House;
let restored: House;
beforeEach(async () => {
  original = await makeHouse();
  restored = await makeHouse();
});
afterEach(async () => {
  await original.clear();
  await restored.clear();
});

/** Every row, and the schema with its rights: a backup without row-level security would open the teams to each other. */
const contents = (house: House) => contentsOf((statement) => house.query(statement));

/** Somebody who was there before the disaster: their password is known, and what is theirs comes back. */
async function expectLife(address: string): Promise<void> {
  const { cookie, teamId } = await signInToDemo(address);
  const answer = await fetch(`${address}/api/v1/teams/${teamId}/bikes`, { headers: { cookie } });
  expect(answer.status).toBe(200);
  expect(((await answer.json()) as { items: unknown[] }).items.length).toBeGreaterThan(0);
}

describe.runIf(hasClientPrograms)('a backup by pg_dump', () => {
  it('taken amid service is all that is needed: the house is gone, and a new one goes on where it was', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'loamledger-backup-'));
    const file = join(folder, 'loamledger.dump');
    try {
      const address = await original.start({ env: withDemo }).address();
      // So that a sign-in is among the rows, as it is on every day but the first.
      await expectLife(address);
      const before = await contents(original);
      await runCommand('pg_dump', ['--format=custom', `--file=${file}`, original.databaseUrl()]);
      await original.clear();
      expect(existsSync(original.data)).toBe(false);
      const newAddress = await restored.start().address();
      const options = ['--clean', '--if-exists', '--no-owner', '--single-transaction'];
      await runCommand('pg_restore', [...options, `--dbname=${restored.databaseUrl()}`, file]);
      expect(await contents(restored)).toEqual(before);
      await expectLife(newAddress);
    } finally {
      await rm(folder, { recursive: true });
    }
  });
});

it.runIf(!hasClientPrograms)('by pg_dump cannot be tried here: it is not installed', ({ skip }) => {
  skip('pg_dump and pg_restore come with the client programs of Postgres');
});

it('starts on a copy of a stopped data folder', async () => {
  const first = original.start({ env: withDemo });
  await first.address();
  const before = await contents(original);
  first.process.kill('SIGTERM');
  await first.ended;
  await rm(restored.data, { recursive: true });
  await runCommand('cp', ['-a', original.data, restored.data]);
  await original.clear();
  const address = await restored.start().address();
  expect(await contents(restored)).toEqual(before);
  await expectLife(address);
});
