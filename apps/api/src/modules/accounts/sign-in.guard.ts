import { createHash } from 'node:crypto';
import { Injectable, type CanActivate, type ExecutionContext } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import { isUUID } from 'class-validator';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { NotFound, Refusal } from '../../platform/errors/refusal.js';
import { type Callers as Allowed, METADATA, type TokenScopeName } from '../../platform/http/access.js';
import { RequestTurns } from '../../platform/http/request-turns.js';
import { requestOrigin } from '../../platform/http/request-origin.js';
import type { Role } from '../../platform/http/scope.js';
import { Callers } from './callers.js';
import type { Caller } from './callers.queries.js';
import { notSignedIn } from './not-signed-in.js';

const MAX_KEY_LENGTH = 200;
/** What is no id is told back no longer than one. */
const ID_LENGTH = 36;

/**
 * Proves, before any controller runs, who asks, and for a route with a team in its path that they belong to the
 * team in a role that may. A team that is not theirs does not exist for them. Then each waits for their turn.
 */
@Injectable()
export class SignInGuard implements CanActivate {
  constructor(
    private readonly reflector: Reflector,
    private readonly callers: Callers,
    private readonly turns: RequestTurns,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const allowed = this.allowedIn(context);
    const http = context.switchToHttp();
    const [request, reply] = [http.getRequest<FastifyRequest>(), http.getResponse<FastifyReply>()];
    if (isFor(allowed, 'stranger')) {
      // Reads of strangers are questions for the service's health: a crowd must not keep the answer back.
      if (request.method !== 'GET') await this.turns.ofStranger(request, reply);
      return true;
    }
    const teamId = (request.params as { teamId?: string }).teamId ?? null;
    const caller = await this.callerInTurn(request, reply, isUUID(teamId) ? teamId : null);
    request.accountId = caller.accountId;
    noteCaller(caller);
    const idempotency = idempotencyOf(request);
    if (teamId !== null && !caller.role) throw new NotFound('team', teamId.slice(0, ID_LENGTH));
    this.refuseTokenBeyondScope(context, caller);
    if (teamId === null || !caller.role) return true;

    if (!isFor(allowed, caller.role)) throw new RoleNotAllowed(caller.role, allowed);
    request.teamScope = {
      teamId,
      accountId: caller.accountId,
      role: caller.role,
      riderId: caller.riderId,
      idempotency,
    };
    return true;
  }

  /** Who asks, once it is their turn; who had to wait is asked for again, as their rights may have ended meanwhile. */
  private async callerInTurn(
    request: FastifyRequest,
    reply: FastifyReply,
    teamId: string | null,
  ): Promise<Caller> {
    let caller = await this.callers.of(request, teamId);
    if (caller && (await this.turns.ofAccount(caller.accountId, request, reply)))
      caller = await this.callers.of(request, teamId);
    if (!caller) throw notSignedIn();
    return caller;
  }

  /** @throws Error for a route that declares nobody: it is our mistake, and nobody is let in. */
  private allowedIn(context: ExecutionContext): Allowed {
    const allowed = this.reflector.get<Allowed | undefined>(METADATA.callers, context.getHandler());
    if (allowed) return allowed;
    throw new Error(`${context.getClass().name}.${context.getHandler().name} declares no roles.`);
  }

  private refuseTokenBeyondScope(context: ExecutionContext, { token }: Caller): void {
    if (!token) return;
    const needed = this.reflector.get<TokenScopeName | undefined>(METADATA.tokenScope, context.getHandler());
    if (!needed || !token.scopes.includes(needed)) throw new TokenScopeMissing(needed);
  }
}

const isFor = (allowed: Allowed, who: Allowed[number]): boolean => allowed.some((one) => one === who);

/** Lets what is done for the request tell whose it is, and the audit trail a script from the person it acts for. */
function noteCaller({ accountId, token }: Caller): void {
  const origin = requestOrigin();
  if (origin) Object.assign(origin, { accountId, tokenId: token?.id ?? null });
}

class RoleNotAllowed extends Refusal {
  constructor(role: Role, allowed: Allowed) {
    super('role.not-allowed', 'forbidden', `This is for ${allowed.join(' and ')}, not for ${role}.`);
  }
}

class TokenScopeMissing extends Refusal {
  constructor(needed: TokenScopeName | undefined) {
    const message = needed ? `The token needs the scope ${needed}.` : 'This is for people, not for tokens.';
    super('token.scope-missing', 'forbidden', message);
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
