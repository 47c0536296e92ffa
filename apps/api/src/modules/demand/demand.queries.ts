import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';
import type { End } from '../suspension/end-inputs.js';
import { DemandFitEntity } from './demand-fit.entity.js';

@Injectable()
export class DemandQueries {
  async evidenceVersion(transaction: Transaction, teamId: string): Promise<number> {
    const rows: { version: number }[] = await transaction.query(
      'select evidence_version as version from team where id = $1',
      [teamId],
    );
    return rows[0]?.version ?? 0;
  }

  async stored(transaction: Transaction, teamId: string, end: End): Promise<DemandFitEntity | null> {
    return transaction.findOneBy(DemandFitEntity, { teamId, end });
  }

  /** Lets one transaction at a time fit this end of this team; others wait, then find the fit stored. */
  async lockFit(transaction: Transaction, teamId: string, end: End): Promise<void> {
    await transaction.query('select pg_advisory_xact_lock(hashtextextended($1, 0))', [
      `demand ${teamId} ${end}`,
    ]);
  }

  async store(
    transaction: Transaction,
    fit: Pick<DemandFitEntity, 'teamId' | 'end' | 'evidenceVersion' | 'modelVersion' | 'fit'>,
  ): Promise<void> {
    await transaction.upsert(DemandFitEntity, { ...fit, fittedAt: new Date() } as never, ['teamId', 'end']);
  }
}
