import { Injectable } from '@nestjs/common';
import { TeamDatabase } from '../../platform/database/team-database.js';
import type { Role } from '../../platform/http/scope.js';
import { hashToken } from '../../platform/security/tokens.js';
import { CallersQueries } from './callers.queries.js';

/** What a sign-in is worth at this moment, for answers that last longer than one request. */
@Injectable()
export class AccessNow {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: CallersQueries,
  ) {}

  /** The role of the sign-in's owner in the team; null: not signed in any more, or no member. */
  async of(token: string, teamId: string): Promise<{ role: Role; riderId: string | null } | null> {
    const found = await this.database.asStranger((statements) =>
      this.queries['sign-in'](statements, hashToken(token), teamId),
    );
    return found?.role ? { role: found.role, riderId: found.riderId } : null;
  }
}
