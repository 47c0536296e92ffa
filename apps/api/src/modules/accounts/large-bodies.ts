import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import type { FastifyRequest } from 'fastify';
import { Callers } from './callers.js';
import { notSignedIn } from './not-signed-in.js';

/**
 * Asks who sends a file before any of it is read: files are far larger than messages, and a stranger could fill the
 * memory with those that the guard refuses afterwards.
 * @param smallBytes as large as a body may be that is read from anybody.
 */
export function refuseFilesOfStrangers(app: NestFastifyApplication, smallBytes: number): void {
  const callers = app.get(Callers);
  app
    .getHttpAdapter()
    .getInstance()
    .addHook('onRequest', async (request) => {
      if (mayBeLarge(request, smallBytes) && !(await callers.of(request, null))) throw notSignedIn();
    });
}

function mayBeLarge({ headers }: FastifyRequest, smallBytes: number): boolean {
  // Messages have a limit of their own.
  if (headers['content-type']?.startsWith('application/json')) return false;
  const length = headers['content-length'];
  return length === undefined ? headers['transfer-encoding'] !== undefined : Number(length) > smallBytes;
}
