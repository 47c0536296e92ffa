import { Client } from 'pg';
import type { TestService } from './service.js';

/** Whatever is on a database that was made for tests. */
interface OnDatabase {
  readonly database: Pick<TestService['database'], 'ownerUrl'>;
}

/** What a statement gives to the owner of the schema, who sees every team. */
export async function asOwner<Row extends object = Record<string, unknown>>(
  service: OnDatabase,
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

/**
 * Makes all sign-ins that were tried ones of the very moment of the next: a busy machine takes longer for it than the
 * second that has to be waited first.
 */
export async function justTried(service: OnDatabase): Promise<void> {
  await asOwner(service, `update sign_in_try set last_at = clock_timestamp() + interval '1 hour'`);
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
