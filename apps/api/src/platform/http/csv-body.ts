import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { Refusal } from '../errors/refusal.js';

/** Lets routes take `text/csv` bodies, as a string. What is no UTF-8 is refused, not stored garbled. */
export function acceptCsvBodies(app: NestFastifyApplication, bodyLimit: number): void {
  app.useBodyParser('text/csv', { bodyLimit }, (_request, body, done) => {
    try {
      done(null, new TextDecoder('utf-8', { fatal: true }).decode(body));
    } catch {
      done(new Refusal('request.not-utf-8', 'malformed', 'Send text encoded as UTF-8.'));
    }
  });
}
