import { Client } from 'pg';
import type { TestService } from './service.js';

/** What a statement gives to the owner of the schema, who sees every team. */
export async function asOwner<Row extends object = Record<string, unknown>>(
  service: TestService,
  statement: string,
  ...values: unknown[]
): Promise<Row[]> {
  const client = new Client({ connectionString: service.database.ownerUrl });
  await client.connect();
  try {
    return (await client.query<Row>(statement, values)).rows;
  } finally {
    await client.end();
  }
}

/** Keeps everybody from reading and writing a table, as statements that take long would, until it is released. */
export async function holdTable(
  service: TestService,
  table: string,
): Promise<{ release: () => Promise<void> }> {
  const client = new Client({ connectionString: service.database.ownerUrl });
  await client.connect();
  await client.query(`begin; lock table ${table} in access exclusive mode`);
  let ended: Promise<void> | undefined;
  return { release: () => (ended ??= client.end()) };
}
