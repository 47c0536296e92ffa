import type { Transaction } from './team-database.js';

/** Names of those of these accounts that are in the team, or were where an archive of it was made. */
export async function namesOf(
  transaction: Transaction,
  accountIds: readonly string[],
): Promise<Map<string, string>> {
  if (accountIds.length === 0) return new Map();
  const rows: { id: string; name: string }[] = await transaction.query(
    `select id, display_name as name from account where id = any ($1::uuid[])
     union all select id, display_name from former_member where id = any ($1::uuid[])`,
    [[...new Set(accountIds)]],
  );
  return new Map(rows.map(({ id, name }) => [id, name]));
}
