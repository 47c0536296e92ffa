import type { FastifyRequest } from 'fastify';

/** A request's way as its route tells it, never the ids in its address; `dashboard` for files, `none` for a wrong way. */
export function routeOf(request: FastifyRequest): string {
  const route = request.routeOptions.url;
  if (request.is404 || route === undefined) return 'none';
  return /^\/(api|metrics)(\/|$)/.test(route) ? route : 'dashboard';
}
