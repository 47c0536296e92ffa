import { AsyncLocalStorage } from 'node:async_hooks';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';

export const DEVICES = ['phone', 'computer', 'other'] as const;
/** What kind of device a request came from, as far as it tells. */
export type Device = (typeof DEVICES)[number];

/** Where the work that is being done comes from. */
export interface RequestOrigin {
  readonly requestId: string;
  readonly device: Device;
  /** The API token that the guard has found; null for a browser's sign-in. */
  tokenId: string | null;
  /** Who asks, as the guard has found; null for a stranger. */
  accountId: string | null;
}

const current = new AsyncLocalStorage<RequestOrigin>();

/** The request that is being served; undefined for what the service does by itself. */
export const requestOrigin = (): RequestOrigin | undefined => current.getStore();

/** Lets everything that is done for a request know which request it is. */
export function followRequests(app: NestFastifyApplication): void {
  app
    .getHttpAdapter()
    .getInstance()
    // Not earlier: reading the body would lose it.
    .addHook('preHandler', (request, _reply, done) => {
      const device = deviceOf(request.headers['user-agent']);
      current.run({ requestId: request.id, device, tokenId: null, accountId: null }, done);
    });
}

function deviceOf(userAgent: string | undefined): Device {
  if (!userAgent?.startsWith('Mozilla/')) return 'other';
  return /Mobile|Tablet/.test(userAgent) ? 'phone' : 'computer';
}
