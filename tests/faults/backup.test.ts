import { execFile, spawnSync } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type House, makeHouse } from './house.js';

/** The commands are those of docs/operations.md. */
const runCommand = promisify(execFile);
const hasClientPrograms = spawnSync('pg_dump', ['--version']).status === 0;

/** What is counted in every table, in the order of their names. */
const TABLES = `select table_name, (xpath('/row/count/text()', query_to_xml(
    format('select count(*) from %I', table_name), true, true, '')))[1]::text as rows
  from information_schema.tables where table_schema = 'public' order by 1`;
const RIGHTS = `select table_name, grantee, string_agg(privilege_type, ',' order by privilege_type) as rights
  from information_schema.role_table_grants where table_schema = 'public' group by 1, 2 order by 1, 2`;
const POLICIES = `select tablename, policyname, qual from pg_policies order by 1, 2`;

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

/** Rows, rights and policies: a backup without its row-level security would open the teams to each other. */
const contents = async (house: House) => [
  await house.query(TABLES),
  await house.query(RIGHTS),
  await house.query(POLICIES),
];

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
