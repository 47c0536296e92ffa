import 'reflect-metadata';
import { readConfig } from './config/config.js';
import { ensureAppRole } from './platform/database/app-role.js';
import { createDataSource } from './platform/database/data-source.js';

/** Brings the database of DATABASE_URL to the newest schema. Safe to run again, and by several at once. */
const MIGRATION_LOCK = 4_750_001;

const config = readConfig(process.env);
await ensureAppRole(config.ownerDatabaseUrl, config.appDatabaseUrl);
const dataSource = createDataSource(config.ownerDatabaseUrl, 2);
await dataSource.initialize();
try {
  // A session lock on a connection of its own: the second process waits, then finds nothing to do.
  const lock = dataSource.createQueryRunner();
  await lock.query('set statement_timeout = 0');
  await lock.query('select pg_advisory_lock($1)', [MIGRATION_LOCK]);
  const done = await dataSource.runMigrations();
  await lock.query('select pg_advisory_unlock($1)', [MIGRATION_LOCK]);
  await lock.release();
  process.stdout.write(
    done.length > 0 ? `migrated: ${done.map(({ name }) => name).join(', ')}\n` : 'schema is up to date\n',
  );
} finally {
  await dataSource.destroy();
}
