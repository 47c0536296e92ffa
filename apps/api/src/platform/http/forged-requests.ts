import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import type { FastifyRequest } from 'fastify';
import { Refusal } from '../errors/refusal.js';

const READS = ['GET', 'HEAD', 'OPTIONS'];

class ForgedRequest extends Refusal {
  constructor() {
    super('request.cross-site', 'forbidden', 'A page of another site may not do this.');
  }
}

/**
 * Refuses writes that a page of another site makes a browser send. A browser says where a request comes from and
 * lets no page say otherwise: in `Sec-Fetch-Site` over HTTPS and on the machine itself, in `Origin` with every
 * write. What carries neither is no page in a browser, and has no cookie but its own.
 */
export function refuseForgedRequests(app: NestFastifyApplication): void {
  app
    .getHttpAdapter()
    .getInstance()
    .addHook('onRequest', async (request) => {
      if (!READS.includes(request.method) && isFromAnotherSite(request)) throw new ForgedRequest();
    });
}

function isFromAnotherSite({ headers }: FastifyRequest): boolean {
  const site = headers['sec-fetch-site'];
  // `none`: typed or opened by the person, from no page.
  if (site !== undefined) return site !== 'same-origin' && site !== 'none';
  return headers.origin !== undefined && hostOf(headers.origin) !== headers.host;
}

const hostOf = (origin: string): string | undefined =>
  URL.canParse(origin) ? new URL(origin).host : undefined;
