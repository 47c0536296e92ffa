import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import type { FastifyReply, FastifyRequest } from 'fastify';

/** Requests for which something is being worked out: their answer has not been given to the server yet. */
const atWork = new WeakSet<FastifyRequest>();
const afterwards = new WeakMap<FastifyRequest, (() => void)[]>();

/** Lets `whenServed` know how far each request is. */
export function followServing(app: NestFastifyApplication): void {
  const server = app.getHttpAdapter().getInstance();
  server.addHook('preHandler', (request, _reply, done) => {
    atWork.add(request);
    done();
  });
  server.addHook('onSend', (request, reply, payload, done) => {
    atWork.delete(request);
    if (reply.raw.destroyed || isEndless(reply)) release(request);
    done(null, payload);
  });
}

/**
 * Calls `done` once, when the request holds nothing of the service any more: its answer has left or its connection is
 * gone, and nothing is worked out for it. Who hangs up goes on holding what is still being done for them. A stream of
 * events, which lasts as long as somebody looks, counts as served when it begins.
 */
export function whenServed(request: FastifyRequest, reply: FastifyReply, done: () => void): void {
  const known = afterwards.get(request);
  if (known) {
    known.push(done);
    return;
  }
  afterwards.set(request, [done]);
  const closed = () => {
    if (!atWork.has(request)) release(request);
  };
  if (reply.raw.destroyed) closed();
  else reply.raw.once('close', closed);
}

function release(request: FastifyRequest): void {
  const all = afterwards.get(request) ?? [];
  afterwards.delete(request);
  for (const done of all) done();
}

const isEndless = (reply: FastifyReply): boolean =>
  String(reply.getHeader('content-type')).startsWith('text/event-stream');
