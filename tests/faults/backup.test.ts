import { execFile, spawnSync } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
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

describe.runIf(hasClientPrograms)('a backup by pg_dump', () => {
  it('restores into a new house, rights and row-level security included, while the old one runs on', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'loamledger-backup-'));
    const file = join(folder, 'loamledger.dump');
    try {
      await original.start({ env: withDemo }).address();
      await runCommand('pg_dump', ['--format=custom', `--file=${file}`, original.databaseUrl()]);
      await restored.start().address();
      const options = ['--clean', '--if-exists', '--no-owner', '--single-transaction'];
      await runCommand('pg_restore', [...options, `--dbname=${restored.databaseUrl()}`, file]);
      expect(await contents(restored)).toEqual(await contents(original));
    } finally {
      await rm(folder, { recursive: true });
    }
  });
});

it('starts on a copy of a stopped data folder', async () => {
  const first = original.start({ env: withDemo });
  await first.address();
  const before = await contents(original);
  first.process.kill('SIGTERM');
  await first.ended;
  await rm(restored.data, { recursive: true });
  await runCommand('cp', ['-a', original.data, restored.data]);
  await restored.start().address();
  expect(await contents(restored)).toEqual(before);
});
