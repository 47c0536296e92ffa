import { Logger } from '@nestjs/common';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { routeOf } from './route-of.js';

/**
 * Logs one line for each answer: which request, by which route, how it ended, how long it took. Nothing of what was sent
 * or answered is in it, nor an address with its ids, nor who asked; the request's id leads to the audit trail.
 */
export function logAnswers(app: NestFastifyApplication): void {
  const logger = new Logger('Answers');
  app
    .getHttpAdapter()
    .getInstance()
    .addHook('onResponse', (request, reply, done) => {
      logger.log('answered', {
        requestId: request.id,
        method: request.method,
        route: routeOf(request),
        status: reply.statusCode,
        durationMs: Math.round(reply.elapsedTime * 10) / 10,
      });
      done();
    });
}
