import { Client } from 'pg';
import { MIGRATIONS } from './migrations.js';

/**
 * Whether a migration has still to run, asked of the database without loading the object-relational mapper: most
 * starts find nothing to do, and need not wait for it.
 */
export async function hasPendingMigrations(ownerUrl: string): Promise<boolean> {
  const client = new Client({ connectionString: ownerUrl });
  await client.connect();
  try {
    const { rows: tables } = await client.query<{ found: boolean }>(
      `select to_regclass('migrations') is not null as found`,
    );
    if (!tables[0]?.found) return true;
    const { rows } = await client.query<{ name: string }>('select name from migrations');
    const done = new Set(rows.map(({ name }) => name));
    return MIGRATIONS.some(({ name }) => !done.has(name));
  } finally {
    await client.end();
  }
}
