import { inject } from 'vitest';
import { appUrlOf, createDatabase, dropDatabase, nameOf } from './sql.js';

export interface TestDatabase {
  /** Address for the schema's owner: DATABASE_URL of a service under test. */
  readonly ownerUrl: string;
  /** Address for the role that serves requests and cannot bypass row-level security. */
  readonly appUrl: string;
  /** Removes the database, ending whatever sessions are left in it. */
  drop(): Promise<void>;
}

/** A migrated, empty database of the caller's own: one for each test file, in `beforeAll`, dropped in `afterAll`. */
export async function createTestDatabase(): Promise<TestDatabase> {
  const templateUrl = inject('templateDatabaseUrl');
  const ownerUrl = await createDatabase(templateUrl, 'test', nameOf(templateUrl));
  return { ownerUrl, appUrl: appUrlOf(ownerUrl), drop: () => dropDatabase(ownerUrl) };
}
