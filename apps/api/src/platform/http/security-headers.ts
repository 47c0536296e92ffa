import helmet from '@fastify/helmet';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';

const OWN = ["'self'"];
const NOTHING = ["'none'"];

/** What a page of ours may load and do: what this service serves; no script and no style that stands in the page itself. */
const CONTENT_SECURITY_POLICY = {
  defaultSrc: OWN,
  scriptSrc: OWN,
  scriptSrcAttr: NOTHING,
  // What scripts set on single elements goes another way, and is not meant.
  styleSrc: OWN,
  styleSrcAttr: NOTHING,
  imgSrc: ["'self'", 'data:'],
  fontSrc: OWN,
  connectSrc: OWN,
  workerSrc: OWN,
  manifestSrc: OWN,
  objectSrc: NOTHING,
  frameSrc: NOTHING,
  baseUri: NOTHING,
  formAction: OWN,
  frameAncestors: NOTHING,
};

/** What no page of ours asks a device for. */
const PERMISSIONS = ['camera', 'microphone', 'geolocation', 'payment', 'usb', 'display-capture']
  .map((feature) => `${feature}=()`)
  .join(', ');

/** Headers that keep a browser from doing with our answers what they are not for. */
export async function sendSecurityHeaders(
  app: NestFastifyApplication,
  { apiPath, isHttps }: { apiPath: string; isHttps: boolean },
): Promise<void> {
  await app.register(helmet, {
    contentSecurityPolicy: { useDefaults: false, directives: CONTENT_SECURITY_POLICY },
    frameguard: { action: 'deny' },
    strictTransportSecurity: isHttps,
  });
  app
    .getHttpAdapter()
    .getInstance()
    .addHook('onSend', async (request, reply) => {
      reply.header('permissions-policy', PERMISSIONS);
      // A team's data must not lie in a cache that others share; a browser asks again with the ETag.
      if (request.url.startsWith(apiPath) && !reply.hasHeader('cache-control')) {
        reply.header('cache-control', 'private, no-cache');
      }
    });
}
