import fastifyStatic from '@fastify/static';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import type { FastifyReply, FastifyRequest } from 'fastify';

/**
 * Serves the built dashboard beside the API. A path that is no file is a page of the dashboard's own router and
 * gets its entry page; a path below the API is left to the API.
 */
export async function serveDashboard(
  app: NestFastifyApplication,
  folder: string,
  apiPath: string,
): Promise<void> {
  await app.register(fastifyStatic, {
    root: folder,
    // The build has compressed every file beside itself: a phone on a bad line gets a third of the bytes.
    preCompressed: true,
    // Names of built files carry a hash of their content; the entry page must be asked for each time.
    setHeaders: (reply, path) =>
      void reply.header(
        'cache-control',
        path.includes('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache',
      ),
    wildcard: false,
  });
  app
    .getHttpAdapter()
    .getInstance()
    .get('/*', (request: FastifyRequest, reply: FastifyReply) => {
      if (request.url.startsWith(apiPath) || looksLikeFile(request.url)) return reply.callNotFound();
      return reply.header('cache-control', 'no-cache').sendFile('index.html');
    });
}

/** A file of an older build that is gone must be missed, not answered with a page that is no script. */
const looksLikeFile = (url: string): boolean => /\.\w+$/.test(url.split('?', 1)[0] ?? '');
