import { Injectable } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import { TeamDatabase } from '../../platform/database/team-database.js';
import { hashToken } from '../../platform/security/tokens.js';
import { CallersQueries, type Caller } from './callers.queries.js';
import { SignInCookie } from './sign-in-cookie.js';

const BEARER = /^Bearer ([\w-]+)$/;

/** Finds out who sends a request: the person behind a cookie, or the one for whom a token acts. */
@Injectable()
export class Callers {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: CallersQueries,
    private readonly cookie: SignInCookie,
  ) {}

  /** Who asks, and what they are in `teamId`; undefined for a stranger. */
  async of(request: FastifyRequest, teamId: string | null): Promise<Caller | undefined> {
    const { authorization } = request.headers;
    if (authorization !== undefined) {
      const token = BEARER.exec(authorization)?.[1];
      return token === undefined ? undefined : this.find('token', hashToken(token), teamId);
    }
    const token = this.cookie.tokenOf(request);
    return token ? this.find('sign-in', hashToken(token), teamId) : undefined;
  }

  private async find(
    kind: 'token' | 'sign-in',
    hash: string,
    teamId: string | null,
  ): Promise<Caller | undefined> {
    const caller = await this.database.asStranger((statements) =>
      this.queries[kind](statements, hash, teamId),
    );
    if (caller?.isStale)
      await this.database.asStranger((statements) => this.queries.see(statements, kind, hash));
    return caller;
  }
}
