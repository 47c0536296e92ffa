import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createDataSource } from '../../apps/api/src/platform/database/data-source.js';
import { inTransaction } from '../../apps/api/src/platform/database/in-transaction.js';
import { PipeliningClient } from '../../apps/api/src/platform/database/pipelining-client.js';
import { createTestDatabase, type TestDatabase } from '../support/database.js';

describe('a connection to the database', () => {
  let database: TestDatabase;
  let client: PipeliningClient;

  beforeAll(async () => {
    database = await createTestDatabase();
    client = new PipeliningClient(database.ownerUrl);
    await client.connect();
  });

  afterAll(async () => {
    await client.end();
    await database.drop();
  });

  const answered = async (text: string, values: unknown[] = []): Promise<unknown> => {
    const { rows } = (await (client.query(text, values) as Promise<{ rows: { answer: unknown }[] }>)) ?? {};
    return rows[0]?.answer;
  };

  it('gives each of many statements that are asked at once its own answer', async () => {
    const asked = Array.from({ length: 60 }, (_, i) => i);
    // With values and without go by different ways of asking.
    const answers = asked.map((i) =>
      i % 3 === 0 ? answered(`select ${i} as answer`) : answered('select $1::int as answer', [i]),
    );
    expect(await Promise.all(answers)).toEqual(asked);
  });

  it('fails none but the statement that is wrong', async () => {
    const told = await Promise.allSettled([
      answered('select $1::int as answer', [1]),
      answered('select $1::int as answer', ['no number']),
      answered('select 1 / $1::int as answer', [0]),
      answered('select $1::int as answer', [2]),
    ]);
    expect(told.map(({ status }) => status)).toEqual(['fulfilled', 'rejected', 'rejected', 'fulfilled']);
    expect(await answered('select $1::int as answer', [3])).toBe(3);
  });

  it('lets the server keep what comes again', async () => {
    const kept = () =>
      answered(`select count(*)::int as answer from pg_prepared_statements where statement like '%kept%'`);
    await answered(`select 'kept' || $1::text as answer`, ['a']);
    expect(await kept()).toBe(0);
    for (const value of ['b', 'c', 'd'])
      expect(await answered(`select 'kept' || $1::text as answer`, [value])).toBe(`kept${value}`);
    expect(await kept()).toBe(1);
  });

  it('reads what was kept of a table that has a column more since', async () => {
    await client.query('create table grown (a int)');
    await client.query('insert into grown values (1)');
    const read = () => answered('select a as answer from grown where a = $1', [1]);
    for (let i = 0; i < 8; i += 1) await read();
    await client.query('alter table grown add column b int not null default 2');
    expect(await read()).toBe(1);
  });
});

describe('a transaction', () => {
  it('leaves nothing behind where it could not be opened as asked, and its connection serves on', async () => {
    const database = await createTestDatabase();
    const source = createDataSource(database.ownerUrl, 1);
    await source.initialize();
    try {
      await source.query('create table written (a int)');
      const failed = inTransaction(
        source,
        (transaction) => transaction.query('select 1 / $1::int', [0]),
        (transaction) => transaction.query('insert into written values ($1)', [1]).catch(() => undefined),
      );
      await expect(failed).rejects.toThrow('division by zero');
      const rows = await inTransaction(
        source,
        () => Promise.resolve(),
        (transaction) => transaction.query<unknown[]>('select from written'),
      );
      expect(rows).toEqual([]);
    } finally {
      await source.destroy();
      await database.drop();
    }
  });

  it('is taken back where its work fails', async () => {
    const database = await createTestDatabase();
    const source = createDataSource(database.ownerUrl, 1);
    await source.initialize();
    try {
      await source.query('create table written (a int)');
      const failed = inTransaction(
        source,
        () => Promise.resolve(),
        async (transaction) => {
          await transaction.query('insert into written values ($1)', [1]);
          throw new Error('no more');
        },
      );
      await expect(failed).rejects.toThrow('no more');
      expect(await source.query('select from written')).toEqual([]);
    } finally {
      await source.destroy();
      await database.drop();
    }
  });
});
