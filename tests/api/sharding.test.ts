import { Client } from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createTestDatabase, type TestDatabase } from '../support/database.js';

let database: TestDatabase;
let owner: Client;
beforeAll(async () => {
  database = await createTestDatabase();
  owner = new Client({ connectionString: database.ownerUrl });
  await owner.connect();
});
afterAll(async () => {
  await owner.end();
  await database.drop();
});

/** Tables that belong to no team: small, and copied to every node where teams are spread. */
const SHARED = ['account', 'migrations', 'sign_in', 'sign_in_try'];

const names = async (statement: string): Promise<string[]> =>
  (await owner.query<{ name: string }>(statement)).rows.map(({ name }) => name);

/** Every table but the shared ones, with the column that names its team: its own id for the team itself. */
const TEAM_KEY = `(case when relation.relname = 'team' then 'id' else 'team_id' end)`;
const ours = `relation.relnamespace = 'public'::regnamespace
  and not relation.relname = any(array[${SHARED.map((name) => `'${name}'`).join(', ')}])`;

describe('a schema whose teams can be spread over several servers', () => {
  it('names the team in every table that is not shared, never as nothing', async () => {
    const without = await names(
      `select relation.relname as name from pg_class relation
       where relation.relkind = 'r' and ${ours}
         and not exists (select from pg_attribute column_
                         where column_.attrelid = relation.oid and column_.attname = ${TEAM_KEY}
                           and column_.attnotnull)`,
    );
    expect(without).toEqual([]);
  });

  it('begins every unique key with the team', async () => {
    const others = await names(
      `select key.indexrelid::regclass::text as name
       from pg_index key
       join pg_class relation on relation.oid = key.indrelid
       join pg_attribute first on first.attrelid = key.indrelid and first.attnum = key.indkey[0]
       where key.indisunique and ${ours} and first.attname <> ${TEAM_KEY}`,
    );
    expect(others).toEqual([]);
  });

  it('begins every reference to a table of teams with the team, on both sides', async () => {
    const others = await names(
      `select reference.conname as name
       from pg_constraint reference
       join pg_class relation on relation.oid = reference.confrelid
       join pg_attribute here on here.attrelid = reference.conrelid and here.attnum = reference.conkey[1]
       join pg_attribute there on there.attrelid = reference.confrelid and there.attnum = reference.confkey[1]
       where reference.contype = 'f' and ${ours}
         and not (here.attname = 'team_id' and there.attname = ${TEAM_KEY})`,
    );
    expect(others).toEqual([]);
  });

  it('finds tables of both kinds, so that none of this holds for want of any', async () => {
    const all = await names(
      `select relname as name from pg_class where relkind = 'r' and relnamespace = 'public'::regnamespace`,
    );
    expect(all).toEqual(expect.arrayContaining(['run', 'team', 'account', 'sign_in']));
  });
});
