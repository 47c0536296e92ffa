import type { Transaction } from './team-database.js';

/**
 * Says that something the demand model reads has changed: a run, or a figure behind its hit height. A stored fit
 * of an older version is stale from here on.
 */
export async function touchEvidence(transaction: Transaction, teamId: string): Promise<void> {
  await transaction.query('update team set evidence_version = evidence_version + 1 where id = $1', [teamId]);
}
