import { applyDecorators, SetMetadata } from '@nestjs/common';
import { ApiExtension } from '@nestjs/swagger';
import type { Role } from './scope.js';

export const TOKEN_SCOPES = ['read', 'log-runs', 'change-set-ups', 'edit-records'] as const;
/** What an API token may be allowed to do. */
export type TokenScopeName = (typeof TOKEN_SCOPES)[number];

/** Who may call a route: anybody, any signed-in person, or the members of the team in its path in these roles. */
export type Callers = readonly ['stranger'] | readonly ['account'] | readonly Role[];

export const METADATA = { callers: 'callers', tokenScope: 'token-scope' } as const;
/** The names of the same in the OpenAPI document. */
export const EXTENSION = { callers: 'x-roles', tokenScope: 'x-token-scope' } as const;

/*
 * Every route says at its own handler who may call it: the guard lets nobody in where nothing is said, and no
 * OpenAPI document is made of such a route.
 */

/** The roles that may call a route of a team. */
export const Roles = (...roles: Role[]): MethodDecorator => callers(roles);
/** Any signed-in person may call it: a route without a team. */
export const AnyAccount = (): MethodDecorator => callers(['account']);
/** Needs no sign-in. */
export const Public = (): MethodDecorator => callers(['stranger']);

/** An API token with this scope may call the route too, in its maker's role. Without it no token may. */
export const TokenScope = (scope: TokenScopeName): MethodDecorator =>
  applyDecorators(SetMetadata(METADATA.tokenScope, scope), ApiExtension(EXTENSION.tokenScope, scope));

const callers = (who: Callers): MethodDecorator =>
  applyDecorators(SetMetadata(METADATA.callers, who), ApiExtension(EXTENSION.callers, who));
