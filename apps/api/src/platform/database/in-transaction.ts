import type { DataSource, EntityManager } from 'typeorm';
import type { PostgresQueryRunner } from 'typeorm/driver/postgres/PostgresQueryRunner.js';

/**
 * Runs `work` in a transaction of a connection of its own, behind what `open` asks. The mapper's own way waits for the
 * answer to START TRANSACTION, and would wait for that of `open`; here the first statement of `work` leaves with both.
 * Where one of the two failed, nothing that follows is done or seen: Postgres refuses every further statement of a
 * broken transaction, and outside of one nobody is named, so row-level security shows no row.
 */
export async function inTransaction<T>(
  dataSource: DataSource,
  open: (transaction: EntityManager) => Promise<unknown>,
  work: (transaction: EntityManager) => Promise<T>,
): Promise<T> {
  const runner = dataSource.createQueryRunner() as PostgresQueryRunner;
  try {
    await runner.connect();
    // What the mapper asks itself before it takes a lock.
    runner.isTransactionActive = true;
    const opened = Promise.all([runner.query('START TRANSACTION'), open(runner.manager)]);
    // It is waited for below; until then nobody may call its failure unexpected.
    opened.catch(() => undefined);
    const answer = await work(runner.manager);
    await opened;
    await runner.query('COMMIT');
    return answer;
  } catch (error) {
    // What is told is what went wrong first. A connection that cannot roll back is lost, and its transaction with it.
    await runner.query('ROLLBACK').catch(() => undefined);
    throw error;
  } finally {
    await runner.release();
  }
}
