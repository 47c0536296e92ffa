import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { tidyNumbers } from './tidy-numbers.js';

/**
 * What every answer gets: numbers without the last bits of a conversion; its ETag, if it carries a version, and 304
 * for who has that version already; and the next page's `Link` header of RFC 8288, if it is a page of a list. As
 * hooks of the server: an interceptor of the framework would cost every read more than all of this.
 */
export function completeAnswers(app: NestFastifyApplication): void {
  const server = app.getHttpAdapter().getInstance();
  server.addHook('preSerialization', (request, reply, answer, done) => {
    const tag = entityTag(answer);
    if (tag !== undefined) void reply.header('etag', tag);
    const link = nextPage(request.url, answer);
    if (link !== undefined) void reply.header('link', link);
    done(null, tidyNumbers(answer));
  });
  server.addHook('onSend', (request, reply, payload, done) => {
    const tag = reply.getHeader('etag');
    const isKnown = request.method === 'GET' && tag !== undefined && request.headers['if-none-match'] === tag;
    if (!isKnown || reply.statusCode !== 200) return done(null, payload);
    void reply.code(304).removeHeader('content-type');
    done(null, null);
  });
}

function entityTag(answer: unknown): string | undefined {
  if (typeof answer !== 'object' || answer === null || !('version' in answer)) return undefined;
  const { version } = answer;
  return typeof version === 'number' || typeof version === 'string' ? `"${version}"` : undefined;
}

function nextPage(requestUrl: string, answer: unknown): string | undefined {
  if (typeof answer !== 'object' || answer === null || !('nextCursor' in answer)) return undefined;
  if (typeof answer.nextCursor !== 'string') return undefined;
  const url = new URL(requestUrl, 'http://host');
  url.searchParams.set('cursor', answer.nextCursor);
  return `<${url.pathname}${url.search}>; rel="next"`;
}
