import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import type { WriteScope } from '../database/team-database.js';

export const ROLES = ['mechanic', 'coach', 'rider'] as const;
/** What a member may do in a team. */
export type Role = (typeof ROLES)[number];

/** Who asks, for which team, in which role: proven by the guard before a controller runs. */
export interface TeamScope extends WriteScope {
  readonly role: Role;
  /** The rider that this member is, if they ride. */
  readonly riderId: string | null;
}

declare module 'fastify' {
  interface FastifyRequest {
    accountId?: string;
    teamScope?: TeamScope;
  }
}

/** The team scope of the request, as the guard has proven it. */
export const Scope = createParamDecorator((_: unknown, context: ExecutionContext): TeamScope => {
  const scope = context.switchToHttp().getRequest<FastifyRequest>().teamScope;
  if (!scope) throw new Error('A route that takes a team scope must have {teamId} in its path.');
  return scope;
});

/** The signed-in account. */
export const Account = createParamDecorator((_: unknown, context: ExecutionContext): string => {
  const accountId = context.switchToHttp().getRequest<FastifyRequest>().accountId;
  if (!accountId) throw new Error('A route that takes the account must not be public.');
  return accountId;
});

/** No rider has it: the filter of a member in the role rider whose rider was not named. */
const NOBODY = '00000000-0000-0000-0000-000000000000';

/** The only rider whose data the member may see, or null where they may see every rider's. */
export const visibleRider = (scope: TeamScope): string | null =>
  scope.role === 'rider' ? (scope.riderId ?? NOBODY) : null;
