import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';
import { StoredRuns } from '../runs/stored-runs.js';
import { comparisonRun, type SectionedRun } from './comparison-run.js';

/** Sessions that the team's scatter is judged by: a season or two, so that it follows the riders' form. */
const SESSIONS = 60;

/** The timed runs of the team's other sessions, from which its own scatter between runs is known. */
@Injectable()
export class PastRuns {
  constructor(private readonly runs: StoredRuns) {}

  async besides(
    transaction: Transaction,
    teamId: string,
    sessionIds: readonly string[],
  ): Promise<readonly SectionedRun[]> {
    const runs = await this.runs.timedOfOtherSessions(transaction, teamId, sessionIds, SESSIONS);
    return runs.map(comparisonRun);
  }
}
