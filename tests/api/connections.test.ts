import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
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

  it('asks anew where what the server kept is out of date', async () => {
    await client.query('create table changed (a int)');
    await client.query('insert into changed values (1)');
    const read = () => answered('select a as answer from changed where $1', [true]);
    for (let i = 0; i < 3; i += 1) expect(await read()).toBe(1);
    await client.query('alter table changed alter column a type text');
    await expect(read()).rejects.toThrow('cached plan');
    for (let i = 0; i < 3; i += 1) expect(await read()).toBe('1');
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
  let database: TestDatabase;
  let source: ReturnType<typeof createDataSource>;

  beforeAll(async () => {
    database = await createTestDatabase();
    source = createDataSource(database.ownerUrl, 1);
    await source.initialize();
    await source.query('create table written (a int)');
  });

  afterAll(async () => {
    await source.destroy();
    await database.drop();
  });

  type Work = Parameters<typeof inTransaction>[2];
  const nothing: Work = () => Promise.resolve();
  const write: Work = (transaction) => transaction.query('insert into written values ($1)', [1]);
  /** By another transaction: on the only connection, so it must serve on. */
  const written = () =>
    inTransaction(source, nothing, (transaction) => transaction.query<unknown[]>('select from written'));

  it('tells why it could not be opened as asked, leaves nothing behind, and its connection serves on', async () => {
    const refused: Work = (transaction) => transaction.query('select 1 / $1::int', [0]);
    await expect(inTransaction(source, refused, write)).rejects.toThrow('division by zero');
    await expect(inTransaction(source, refused, nothing)).rejects.toThrow('division by zero');
    expect(await written()).toEqual([]);
  });

  it('is taken back where its work fails', async () => {
    const failed = inTransaction(source, nothing, async (transaction) => {
      await write(transaction);
      throw new Error('no more');
    });
    await expect(failed).rejects.toThrow('no more');
    expect(await written()).toEqual([]);
  });

  it('acknowledges nothing where a statement was refused, though its work says that all is well', async () => {
    const acknowledged = inTransaction(source, nothing, async (transaction) => {
      await write(transaction);
      await transaction.query('select 1 / $1::int', [0]).catch(() => undefined);
      return 'stored';
    });
    await expect(acknowledged).rejects.toThrow('refused');
    expect(await written()).toEqual([]);
  });

  it('takes back with itself what a transaction within it has stored', async () => {
    const failed = inTransaction(source, nothing, async (transaction) => {
      await write(transaction);
      await transaction.transaction(write);
      throw new Error('no more');
    });
    await expect(failed).rejects.toThrow('no more');
    expect(await written()).toEqual([]);
  });

  it('has said whose rows it sees before it asks for the first', async () => {
    const sent: string[] = [];
    const send = vi.spyOn(pg.Client.prototype, 'query');
    const open: Work = (transaction) => transaction.query(`select set_config('app.team_id', $1, true)`, ['']);
    await inTransaction(source, open, (transaction) => transaction.query('select $1::int', [1]));
    for (const [statement] of send.mock.calls as unknown[][])
      sent.push(typeof statement === 'string' ? statement : (statement as { text: string }).text);
    send.mockRestore();
    expect(sent.map((text) => text.slice(0, 17))).toEqual([
      'START TRANSACTION',
      'select set_config',
      'select $1::int',
      'COMMIT',
    ]);
  });
});
