import type { TestProject } from 'vitest/node';
import { startThrowaway } from '../../apps/api/scripts/postgres/embedded.mjs';
import { ensureAppRole } from '../../apps/api/src/platform/database/app-role.js';
import { createDataSource } from '../../apps/api/src/platform/database/data-source.js';
import { appUrlOf, createDatabase, dropDatabase } from './sql.js';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Owner's address of a migrated, otherwise empty database that each test file's own is copied from. */
    templateDatabaseUrl: string;
  }
}

/**
 * Global set-up of the projects that need a database: migrates a template on the server of TEST_DATABASE_URL,
 * or, when a project is run by hand without one, on a throw-away Postgres of its own.
 */
export default async function setUp(project: TestProject): Promise<() => Promise<void>> {
  const given = process.env['TEST_DATABASE_URL'];
  const server = given ? { url: given, stop: () => Promise.resolve() } : await startThrowaway();
  const templateUrl = await createDatabase(server.url, 'template');
  await migrate(templateUrl);
  project.provide('templateDatabaseUrl', templateUrl);
  return async () => {
    await dropDatabase(templateUrl);
    await server.stop();
  };
}

/** From the sources, so that a test never sees a stale build. */
async function migrate(ownerUrl: string): Promise<void> {
  await ensureAppRole(ownerUrl, appUrlOf(ownerUrl));
  const dataSource = createDataSource(ownerUrl, 1);
  await dataSource.initialize();
  await dataSource.runMigrations();
  await dataSource.destroy();
}
