import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { Refusal } from '../errors/refusal.js';

/** Deeper than any message; what is nested by the thousand breaks every function that calls itself on it. */
export const MAX_DEPTH = 20;

/** Refuses JSON bodies that are nested too deeply, before anything walks through them. */
export function refuseDeepBodies(app: NestFastifyApplication): void {
  app
    .getHttpAdapter()
    .getInstance()
    .addHook('preHandler', async ({ body }) => {
      if (isDeeperThan(MAX_DEPTH, body)) {
        throw new Refusal('request.too-deep', 'malformed', `JSON is nested at most ${MAX_DEPTH} deep.`);
      }
    });
}

export function isDeeperThan(limit: number, value: unknown): boolean {
  let level = [value].filter(isNested);
  for (let depth = 0; level.length > 0; depth += 1) {
    if (depth === limit) return true;
    level = level.flatMap((node) => Object.values(node).filter(isNested));
  }
  return false;
}

const isNested = (value: unknown): value is object => typeof value === 'object' && value !== null;
