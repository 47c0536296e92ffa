import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';
import type { TokenScopeName } from '../../platform/http/access.js';
import type { Role } from '../../platform/http/scope.js';

/** Who asks, and what they are in the team they ask about. */
export interface Caller {
  accountId: string;
  role: Role | null;
  riderId: string | null;
  /** Whether it is time to write down that the sign-in or the token was used. */
  isStale: boolean;
  /** The token that acts for the person; null for the person. */
  token: { id: string; scopes: readonly TokenScopeName[] } | null;
}

type Row = Omit<Caller, 'token'> & { tokenId: string; scopes: TokenScopeName[] };
const COLUMNS = 'account_id as "accountId", role, rider_id as "riderId", is_stale as "isStale"';

/** The questions that come before it is known who asks. */
@Injectable()
export class CallersQueries {
  async 'sign-in'(statements: Transaction, hash: string, teamId: string | null): Promise<Caller | undefined> {
    const [row] = await statements.query<Row[]>(`select ${COLUMNS} from request_scope($1, $2)`, [
      hash,
      teamId,
    ]);
    return row && { ...row, token: null };
  }

  async token(statements: Transaction, hash: string, teamId: string | null): Promise<Caller | undefined> {
    const [row] = await statements.query<Row[]>(
      `select ${COLUMNS}, token_id as "tokenId", scopes from token_scope($1, $2)`,
      [hash, teamId],
    );
    return row && { ...row, token: { id: row.tokenId, scopes: row.scopes } };
  }

  /** Writes down that the sign-in or the token was used just now. */
  async see(statements: Transaction, kind: 'sign-in' | 'token', hash: string): Promise<void> {
    await statements.query(`select ${kind === 'token' ? 'see_token' : 'see_sign_in'}($1)`, [hash]);
  }
}
