import { ownerAddress, readConfig } from './config/config.js';
import { ensureAppRole } from './platform/database/app-role.js';
import { hasPendingMigrations } from './platform/database/pending-migrations.js';

/** Brings the database of DATABASE_URL to the newest schema. Safe to run again, and by several at once. */
const MIGRATION_LOCK = 4_750_001;

const config = readConfig(process.env);
const ownerUrl = ownerAddress(config);
await ensureAppRole(ownerUrl, config.appDatabaseUrl);
const done = (await hasPendingMigrations(ownerUrl)) ? await migrate() : [];
process.stdout.write(done.length > 0 ? `migrated: ${done.join(', ')}\n` : 'schema is up to date\n');

/** The names of the migrations that were run. */
async function migrate(): Promise<string[]> {
  const { createDataSource } = await import('./platform/database/data-source.js');
  const dataSource = createDataSource(ownerUrl, 2, {});
  await dataSource.initialize();
  try {
    // A session lock on a connection of its own: the second process waits, then finds nothing to do.
    const lock = dataSource.createQueryRunner();
    await lock.query('select pg_advisory_lock($1)', [MIGRATION_LOCK]);
    const run = await dataSource.runMigrations();
    await lock.query('select pg_advisory_unlock($1)', [MIGRATION_LOCK]);
    await lock.release();
    return run.map(({ name }) => name);
  } finally {
    await dataSource.destroy();
  }
}
