import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import type { Config } from '../../config/config.js';
import { CONFIG } from '../../config/config.token.js';
import { signInCookieName } from '../security/sign-in-cookie-name.js';
import { withConventions } from './open-api-conventions.js';
import { DocumentBuilder, SwaggerModule, type OpenAPIObject } from '@nestjs/swagger';

/** The OpenAPI 3.1 document of the service, made from the code. */
export function openApiDocument(app: NestFastifyApplication): OpenAPIObject {
  const base = new DocumentBuilder()
    .setTitle('Loamledger')
    .setDescription(
      'Suspension set-up for a race team. Field names carry the unit. Errors are problem details (RFC 9457). ' +
        'Every POST takes an Idempotency-Key; every PUT takes the ETag, or the version in quotes, as If-Match.',
    )
    .setVersion('1')
    .setOpenAPIVersion('3.1.0')
    .addCookieAuth(signInCookieName(app.get<Config>(CONFIG).secureCookies))
    .build();
  const document = SwaggerModule.createDocument(app, base, {
    operationIdFactory: (controller, method) => `${controller.replace(/Controller$/, '')}_${method}`,
  });
  return withConventions(document);
}

/** Serves the document at `/api/v1/openapi.json`. */
export function serveOpenApi(app: NestFastifyApplication): void {
  let document: OpenAPIObject | undefined;
  app
    .getHttpAdapter()
    .getInstance()
    .get('/api/v1/openapi.json', async () => (document ??= openApiDocument(app)));
}
