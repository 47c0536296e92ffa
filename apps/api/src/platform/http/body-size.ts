import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { Refusal } from '../errors/refusal.js';

/** Deeper than any message; what is nested by the thousand breaks every function that calls itself on it. */
export const MAX_DEPTH = 20;

/** Several times what the largest message holds. Each is looked at by every check, and one that is wrong is told of. */
const MAX_VALUES = 10_000;

const TOO_LARGE = 413;

/**
 * Refuses JSON bodies that are nested too deeply or hold too much, before anything walks through them. What has more bytes
 * than there may be is read to its end all the same, into nothing and for as long as a request may take: a connection
 * that is closed amid it breaks before the answer has been read.
 */
export function refuseLargeBodies(app: NestFastifyApplication): void {
  const server = app.getHttpAdapter().getInstance();
  server.addHook('preHandler', async ({ body }) => {
    if (isDeeperThan(MAX_DEPTH, body)) {
      throw new Refusal('request.too-deep', 'malformed', `JSON is nested at most ${MAX_DEPTH} deep.`);
    }
    if (hasMoreThan(MAX_VALUES, body)) {
      throw new Refusal('request.too-many-values', 'malformed', `JSON holds at most ${MAX_VALUES} values.`);
    }
  });
  server.addHook('onSend', (_request, reply, payload, done) => {
    if (reply.statusCode === TOO_LARGE) void reply.removeHeader('connection');
    done(null, payload);
  });
}

/** Calls itself no deeper than `limit` and keeps nothing: a body may hold a million lists. */
export function isDeeperThan(limit: number, value: unknown): boolean {
  if (!isNested(value)) return false;
  if (limit === 0) return true;
  if (Array.isArray(value)) return value.some((item) => isDeeperThan(limit - 1, item));
  for (const name in value) {
    if (isDeeperThan(limit - 1, (value as Record<string, unknown>)[name])) return true;
  }
  return false;
}

/** Stops as soon as it knows. The value must not be nested deeply. */
function hasMoreThan(most: number, value: unknown): boolean {
  let left = most;
  const count = (one: unknown): void => {
    left -= 1;
    if (!isNested(one)) return;
    for (const name in one) {
      if (left < 0) return;
      count((one as Record<string, unknown>)[name]);
    }
  };
  count(value);
  return left < 0;
}

const isNested = (value: unknown): value is object => typeof value === 'object' && value !== null;
