import type { QueryRunner } from 'typeorm';

/**
 * Lets the audit trail record what happens to a table's rows, in the transaction in which it happens.
 * @param events such as `insert or update or delete`.
 * @param ignored fields whose change alone is nobody's doing.
 */
export async function recordChangesOf(
  runner: QueryRunner,
  table: string,
  events: string,
  ignored: readonly string[],
): Promise<void> {
  const names = ignored.map((field) => `'${field}'`).join(', ');
  await runner.query(
    `create trigger ${table}_audit after ${events} on ${table} for each row execute function record_change(${names})`,
  );
}
