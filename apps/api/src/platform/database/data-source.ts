import { DataSource } from 'typeorm';
import { ENTITIES } from './entities.js';
import { MIGRATIONS } from './migrations.js';
import { SnakeCaseNames } from './snake-case-names.js';

/** The schema as entities and migrations know it, over `url`. `synchronize` is off for good: migrations rule. */
export function createDataSource(url: string, poolSize: number): DataSource {
  return new DataSource({
    type: 'postgres',
    url,
    entities: ENTITIES,
    migrations: MIGRATIONS,
    migrationsTransactionMode: 'each',
    namingStrategy: new SnakeCaseNames(),
    synchronize: false,
    poolSize,
    // A statement that runs longer is cancelled: no request may hold a connection for ever.
    extra: { statement_timeout: 15_000, connectionTimeoutMillis: 5_000 },
  });
}
