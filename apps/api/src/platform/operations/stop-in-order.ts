import { setTimeout as sleep } from 'node:timers/promises';
import { Logger } from '@nestjs/common';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { Serving } from './serving.js';

/**
 * Lets the process end in order when it is asked to: it says that it is no longer ready, goes on for `drainSeconds` so
 * that a balancer notices, takes no more connections, finishes the requests in progress, and closes its own. Asked a
 * second time it ends at once.
 */
export function stopInOrder(app: NestFastifyApplication, drainSeconds: number): void {
  const serving = app.get(Serving);
  // Whoever keeps its connection for the next request would keep the process too.
  app
    .getHttpAdapter()
    .getInstance()
    .addHook('onSend', (_request, reply, payload, done) => {
      if (serving.isLeaving) void reply.header('connection', 'close');
      done(null, payload);
    });
  const stop = async (): Promise<void> => {
    try {
      serving.leave();
      await sleep(drainSeconds * 1e3);
      await app.close();
      process.exit(0);
    } catch (error) {
      new Logger('Stop').error(error instanceof Error ? error.message : String(error));
      process.exit(1);
    }
  };
  for (const signal of ['SIGTERM', 'SIGINT'] as const) process.once(signal, () => void stop());
}
