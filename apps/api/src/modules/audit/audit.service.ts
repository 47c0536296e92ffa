import { Injectable } from '@nestjs/common';
import { TeamDatabase } from '../../platform/database/team-database.js';
import { toPage, type Page } from '../../platform/http/page.js';
import type { TeamScope } from '../../platform/http/scope.js';
import type { AuditEntryEntity } from './audit-entry.entity.js';
import type { AuditEntryDto, AuditQuery } from './audit.dto.js';
import { AuditQueries } from './audit.queries.js';

@Injectable()
export class AuditService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: AuditQueries,
  ) {}

  async list(scope: TeamScope, { kind, accountId, ...page }: AuditQuery): Promise<Page<AuditEntryDto>> {
    const filter = { ...(kind && { kind }), ...(accountId && { accountId }) };
    return this.database.inTeam(scope, async (transaction) => {
      const rows = await this.queries.page(transaction, scope.teamId, page, filter);
      const ids = rows.flatMap(({ recordId, tokenId }) => [recordId, ...(tokenId ? [tokenId] : [])]);
      const names = await this.queries.names(transaction, scope.teamId, ids);
      return toPage(rows, page.limit, (row) => toAnswer(row, names));
    });
  }
}

const toAnswer = (row: AuditEntryEntity, names: ReadonlyMap<string, string>): AuditEntryDto => ({
  id: row.id,
  at: row.createdAt.toISOString(),
  accountId: row.accountId,
  accountName: row.accountName,
  client: row.client,
  tokenName: (row.tokenId && names.get(row.tokenId)) ?? null,
  action: row.action,
  kind: row.kind,
  recordId: row.recordId,
  recordName: names.get(row.recordId) ?? null,
  fields: row.fields,
  requestId: row.requestId,
});
