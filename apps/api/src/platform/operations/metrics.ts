import { timingSafeEqual } from 'node:crypto';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Gauge, Histogram, Registry } from 'prom-client';
import { hashToken } from '../security/tokens.js';
import { Gauges } from './gauges.js';
import { routeOf } from './route-of.js';

/** Where the service serves its metrics: the usual place. */
const METRICS_PATH = '/metrics';
/** Upper ends of the classes of durations, s: from a card out of the cache to a statement at its limit. */
const DURATIONS_S = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 15];

/**
 * Serves the figures of this process in the text format of Prometheus to who sends `token` as a bearer token, and
 * counts requests by their route. Without a token nothing is counted and nothing served.
 */
export async function serveMetrics(app: NestFastifyApplication, token: string | undefined): Promise<void> {
  const server = app.getHttpAdapter().getInstance();
  if (token === undefined) {
    server.get(METRICS_PATH, (_request: FastifyRequest, reply: FastifyReply) => reply.callNotFound());
    return;
  }
  const registry = await collect(app.get(Gauges));
  const requests = registry.getSingleMetric('http_request_duration_seconds') as Histogram;
  server.addHook('onResponse', (request, reply, done) => {
    // A stream of events lasts as long as somebody looks: it would say nothing about how fast answers are.
    if (!String(reply.getHeader('content-type')).startsWith('text/event-stream')) {
      const labels = { method: request.method, route: routeOf(request), status: reply.statusCode };
      requests.observe(labels, reply.elapsedTime / 1e3);
    }
    done();
  });
  const expected = Buffer.from(hashToken(`Bearer ${token}`));
  server.get(METRICS_PATH, async (request: FastifyRequest, reply: FastifyReply) => {
    const given = Buffer.from(hashToken(request.headers.authorization ?? ''));
    if (!timingSafeEqual(given, expected)) return reply.callNotFound();
    return reply
      .header('content-type', registry.contentType)
      .header('cache-control', 'no-store')
      .send(await registry.metrics());
  });
}

/** Loaded only where metrics are wanted: it takes part of a start that others need not wait for. */
async function collect({ all }: Gauges): Promise<Registry> {
  const { Registry, Gauge, Histogram, collectDefaultMetrics } = await import('prom-client');
  const registry = new Registry();
  collectDefaultMetrics({ register: registry });
  new Histogram({
    name: 'http_request_duration_seconds',
    help: 'How long requests took, by route and status.',
    labelNames: ['method', 'route', 'status'],
    buckets: DURATIONS_S,
    registers: [registry],
  });
  for (const { name, help, read } of all) {
    new Gauge({
      ...{ name, help, registers: [registry] },
      collect(this: Gauge) {
        this.set(read());
      },
    });
  }
  return registry;
}
