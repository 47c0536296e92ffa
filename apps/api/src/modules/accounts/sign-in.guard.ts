import { createHash } from 'node:crypto';
import { Injectable, type CanActivate, type ExecutionContext } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import { isUUID } from 'class-validator';
import type { FastifyRequest } from 'fastify';
import { TeamDatabase } from '../../platform/database/team-database.js';
import { NotFound, Refusal } from '../../platform/errors/refusal.js';
import { type Callers, METADATA } from '../../platform/http/access.js';
import type { Role } from '../../platform/http/scope.js';
import { hashToken } from '../../platform/security/tokens.js';
import { SIGN_IN_COOKIE } from './sign-in-cookie.js';
import { SignInsQueries } from './sign-ins.queries.js';

const MAX_KEY_LENGTH = 200;

/**
 * Proves, before any controller runs, who asks, and for a route with a team in its path that they belong to the
 * team in a role that may. A team that is not theirs does not exist for them.
 */
@Injectable()
export class SignInGuard implements CanActivate {
  constructor(
    private readonly reflector: Reflector,
    private readonly database: TeamDatabase,
    private readonly queries: SignInsQueries,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const callers = this.callersOf(context);
    if (isFor(callers, 'stranger')) return true;
    const request = context.switchToHttp().getRequest<FastifyRequest>();
    const token = request.cookies[SIGN_IN_COOKIE];
    if (!token) throw notSignedIn();
    const teamId = (request.params as { teamId?: string }).teamId ?? null;
    if (teamId !== null && !isUUID(teamId)) throw new NotFound('team', teamId.slice(0, 40));

    const found = await this.database.asStranger((statements) =>
      this.queries.requestScope(statements, hashToken(token), teamId),
    );
    if (!found) throw notSignedIn();
    if (found.isStale)
      await this.database.asStranger((statements) => this.queries.see(statements, hashToken(token)));
    request.accountId = found.accountId;
    const idempotency = idempotencyOf(request);
    if (teamId === null) return true;
    if (!found.role) throw new NotFound('team', teamId);

    if (!isFor(callers, found.role)) throw new RoleNotAllowed(found.role, callers);
    request.teamScope = {
      teamId,
      accountId: found.accountId,
      role: found.role,
      riderId: found.riderId,
      idempotency,
    };
    return true;
  }

  /** @throws Error for a route that declares nobody: it is our mistake, and nobody is let in. */
  private callersOf(context: ExecutionContext): Callers {
    const callers = this.reflector.get<Callers | undefined>(METADATA.callers, context.getHandler());
    if (callers) return callers;
    throw new Error(`${context.getClass().name}.${context.getHandler().name} declares no roles.`);
  }
}

const isFor = (callers: Callers, who: Callers[number]): boolean => callers.some((caller) => caller === who);

const notSignedIn = () => new Refusal('sign-in.required', 'unauthenticated', 'Sign in first.');

class RoleNotAllowed extends Refusal {
  constructor(role: Role, allowed: Callers) {
    super('role.not-allowed', 'forbidden', `This is for ${allowed.join(' and ')}, not for ${role}.`);
  }
}

function idempotencyOf(request: FastifyRequest): { key: string; fingerprint: string } | undefined {
  const key = request.headers['idempotency-key'];
  if (request.method !== 'POST' || key === undefined) return undefined;
  if (typeof key !== 'string' || key.length === 0 || key.length > MAX_KEY_LENGTH) {
    throw new Refusal(
      'idempotency.bad-key',
      'malformed',
      `Idempotency-Key has 1 to ${MAX_KEY_LENGTH} characters.`,
    );
  }
  const fingerprint = createHash('sha256')
    .update(`${request.url}\n${JSON.stringify(request.body ?? null)}`)
    .digest('hex');
  return { key, fingerprint };
}
