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
