import type { ClientBase } from 'pg';
import { DataSource } from 'typeorm';
import { ENTITIES } from './entities.js';
import { MIGRATIONS } from './migrations.js';
import { PipeliningClient } from './pipelining-client.js';
import { SnakeCaseNames } from './snake-case-names.js';

/** Limits of what serves requests, in ms. */
const REQUEST_LIMITS = {
  /** A statement that runs longer is cancelled: no request may hold a connection for ever. */
  statement_timeout: 15_000,
  /** A process that hangs amid a transaction must not hold its locks for ever; computing between statements is shorter. */
  idle_in_transaction_session_timeout: 60_000,
  /** A server that has lost its power or its network cancels nothing: we give the connection up ourselves, later. */
  query_timeout: 20_000,
};
/** A connection is made anew now and then: what comes to be asked often is kept again, what does not no longer. */
const CONNECTION_SECONDS = 1_800;
const CONNECT_LIMIT_MS = 5_000;

/**
 * The schema as entities and migrations know it, over `url`. `synchronize` is off for good: migrations rule.
 * @param limits for each connection; none for a migration, which may take as long as a full table needs.
 */
export function createDataSource(
  url: string,
  poolSize: number,
  limits: Readonly<Record<string, number>> = REQUEST_LIMITS,
): DataSource {
  return new DataSource({
    type: 'postgres',
    url,
    entities: ENTITIES,
    migrations: MIGRATIONS,
    migrationsTransactionMode: 'each',
    namingStrategy: new SnakeCaseNames(),
    synchronize: false,
    poolSize,
    extra: {
      ...limits,
      Client: PipeliningClient,
      connectionTimeoutMillis: CONNECT_LIMIT_MS,
      maxLifetimeSeconds: CONNECTION_SECONDS,
      keepAlive: true,
      onConnect: outliveErrors,
    },
  });
}

/**
 * A connection that breaks may say so twice, the second time when it was given back already and nobody listens; that
 * would end the process. Whoever uses it learns of the first from the statement that fails.
 */
function outliveErrors(connection: ClientBase): void {
  connection.on('error', () => undefined);
}
