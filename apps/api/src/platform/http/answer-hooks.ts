import { createHash } from 'node:crypto';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import type { FastifyReply } from 'fastify';
import { tidyNumbers } from './tidy-numbers.js';

/** 96 bits. */
const DIGEST_LENGTH = 16;

/**
 * What every answer gets: numbers without the last bits of a conversion; its ETag, if it carries a version, and 304 for
 * who has those very bytes already; and the next page's `Link` header of RFC 8288, if it is a page of a list. One version of
 * a thing reads differently to a mechanic and to the rider who signs in after them in the same browser, or before and after
 * a run of a plan was voided. As hooks of the server: an interceptor of the framework would cost every read more than all of
 * this.
 */
export function completeAnswers(app: NestFastifyApplication): void {
  const server = app.getHttpAdapter().getInstance();
  // Of answers of ours only: a file of the dashboard has a tag of its own.
  const versions = new WeakMap<FastifyReply, number | string>();
  server.addHook('preSerialization', (request, reply, answer, done) => {
    const version = versionOf(answer);
    if (version !== undefined) versions.set(reply, version);
    const link = nextPage(request.url, answer);
    if (link !== undefined) void reply.header('link', link);
    done(null, tidyNumbers(answer));
  });
  server.addHook('onSend', (request, reply, payload, done) => {
    const version = versions.get(reply);
    if (version === undefined || typeof payload !== 'string') return done(null, payload);
    const tag = entityTag(version, payload);
    void reply.header('etag', tag);
    const isKnown = request.method === 'GET' && request.headers['if-none-match'] === tag;
    if (!isKnown || reply.statusCode !== 200) return done(null, payload);
    void reply.code(304).removeHeader('content-type');
    done(null, null);
  });
}

function versionOf(answer: unknown): number | string | undefined {
  if (typeof answer !== 'object' || answer === null || !('version' in answer)) return undefined;
  const { version } = answer;
  return typeof version === 'number' || typeof version === 'string' ? version : undefined;
}

/** The version, which is what a change is made to, and a digest of what was answered of it. */
function entityTag(version: number | string, payload: string): string {
  const digest = createHash('sha256').update(payload).digest('base64url').slice(0, DIGEST_LENGTH);
  return `"${version}.${digest}"`;
}

function nextPage(requestUrl: string, answer: unknown): string | undefined {
  if (typeof answer !== 'object' || answer === null || !('nextCursor' in answer)) return undefined;
  if (typeof answer.nextCursor !== 'string') return undefined;
  const url = new URL(requestUrl, 'http://host');
  url.searchParams.set('cursor', answer.nextCursor);
  return `<${url.pathname}${url.search}>; rel="next"`;
}
