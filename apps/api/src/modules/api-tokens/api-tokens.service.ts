import { Injectable } from '@nestjs/common';
import { newId } from '../../platform/database/new-id.js';
import { TeamDatabase } from '../../platform/database/team-database.js';
import { NotFound } from '../../platform/errors/refusal.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { hashToken, newToken } from '../../platform/security/tokens.js';
import type { ApiTokenEntity } from './api-token.entity.js';
import type { ApiTokenDto, ApiTokenInputDto, NewApiTokenDto } from './api-tokens.dto.js';
import { ApiTokensQueries } from './api-tokens.queries.js';

/** So that a token that was published by mistake can be found for what it is. */
const PREFIX = 'lml_';

@Injectable()
export class ApiTokensService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: ApiTokensQueries,
  ) {}

  /** The tokens in force. */
  async list(scope: TeamScope): Promise<ApiTokenDto[]> {
    const rows = await this.database.inTeam(scope, (transaction) =>
      this.queries.inForce(transaction, scope.teamId),
    );
    return rows.map(toAnswer);
  }

  /**
   * Makes a token and tells it, this once. A repeated request makes another: a stored answer would be the token in
   * the clear.
   */
  async create(scope: TeamScope, { name, scopes }: ApiTokenInputDto): Promise<NewApiTokenDto> {
    const token = `${PREFIX}${newToken()}`;
    const { teamId, accountId } = scope;
    const row = await this.database.inTeam(scope, (transaction) =>
      this.queries.insert(transaction, {
        teamId,
        id: newId(),
        accountId,
        name,
        scopes,
        tokenHash: hashToken(token),
      }),
    );
    return { ...toAnswer(row), token };
  }

  async revoke(scope: TeamScope, id: string): Promise<void> {
    const isRevoked = await this.database.inTeam(scope, (transaction) =>
      this.queries.revoke(transaction, scope.teamId, id),
    );
    if (!isRevoked) throw new NotFound('token', id);
  }
}

const toAnswer = (row: ApiTokenEntity): ApiTokenDto => ({
  id: row.id,
  accountId: row.accountId,
  name: row.name,
  scopes: row.scopes,
  createdAt: row.createdAt.toISOString(),
  lastUsedAt: row.lastUsedAt?.toISOString() ?? null,
});
