import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { Refusal } from '../errors/refusal.js';

/** The body of a request to a route that takes text. @throws `refusal` for one of another type. */
export function textOf(body: unknown, refusal: Refusal): string {
  if (typeof body !== 'string') throw refusal;
  return body;
}

/** Lets routes take bodies of `type`, as a string. What is no UTF-8 is refused, not stored garbled. */
export function acceptTextBodies(app: NestFastifyApplication, type: string, bodyLimit: number): void {
  app.useBodyParser(type, { bodyLimit }, (_request, body, done) => {
    try {
      done(null, new TextDecoder('utf-8', { fatal: true }).decode(body));
    } catch {
      done(new Refusal('request.not-utf-8', 'malformed', 'Send text encoded as UTF-8.'));
    }
  });
}
