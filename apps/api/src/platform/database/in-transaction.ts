import type { Client } from 'pg';
import type { DataSource, EntityManager } from 'typeorm';
import type { PostgresQueryRunner } from 'typeorm/driver/postgres/PostgresQueryRunner.js';

/** What each statement sees: what is stored by then, or what was by the first. */
type Isolation = 'READ COMMITTED' | 'REPEATABLE READ';
const START: Readonly<Record<Isolation, string>> = {
  'READ COMMITTED': 'START TRANSACTION',
  'REPEATABLE READ': 'START TRANSACTION ISOLATION LEVEL REPEATABLE READ',
};

/**
 * Runs `work` in a transaction of a connection of its own, behind what `open` asks. The mapper's own way waits for the
 * answer to START TRANSACTION, and would wait for that of `open`; here the first statement of `work` leaves with both.
 * Where one of the two failed, nothing that follows is done or seen: Postgres refuses every further statement of a
 * broken transaction, and outside of one nobody is named, so row-level security shows no row.
 * @throws what went wrong first, or Error where `work` answers though a statement of it was refused.
 */
export async function inTransaction<T>(
  dataSource: DataSource,
  open: (transaction: EntityManager) => Promise<unknown>,
  work: (transaction: EntityManager) => Promise<T>,
  isolation: Isolation = 'READ COMMITTED',
): Promise<T> {
  const runner = dataSource.createQueryRunner() as PostgresQueryRunner;
  try {
    const connection = (await runner.connect()) as Client;
    tellOfTransaction(runner);
    const opened = Promise.all([runner.query(START[isolation]), open(runner.manager)]);
    // It is waited for below; until then nobody may call its failure unexpected.
    opened.catch(() => undefined);
    try {
      const answer = await work(runner.manager);
      await opened;
      // Postgres takes the COMMIT of a broken transaction for a ROLLBACK: no error, only its answer's name tells.
      const { command } = await connection.query('COMMIT');
      if (command !== 'COMMIT')
        throw new Error('A statement was refused, and the work went on as if it had not been.');
      return answer;
    } catch (error) {
      const first: unknown = await opened.then(
        () => error,
        (reason: unknown) => reason,
      );
      // A connection that cannot roll back must not come to anybody else: the pool takes none back that is ending.
      await runner.query('ROLLBACK').catch(() => void connection.end().catch(() => undefined));
      throw first;
    }
  } finally {
    await runner.release();
  }
}

/** What the mapper asks itself before it takes a lock, and before it makes a transaction within this one a savepoint. */
function tellOfTransaction(runner: PostgresQueryRunner): void {
  runner.isTransactionActive = true;
  (runner as unknown as { transactionDepth: number }).transactionDepth = 1;
}
