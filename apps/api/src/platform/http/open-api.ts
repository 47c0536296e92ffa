import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { DocumentBuilder, SwaggerModule, type OpenAPIObject } from '@nestjs/swagger';

/** The OpenAPI 3.1 document of the service, made from the code. */
export function openApiDocument(app: NestFastifyApplication): OpenAPIObject {
  const base = new DocumentBuilder()
    .setTitle('Loamledger')
    .setDescription(
      'Suspension set-up for a race team. Field names carry the unit. Errors are problem details (RFC 9457). ' +
        'Every POST takes an Idempotency-Key; every PUT takes the ETag as If-Match.',
    )
    .setVersion('1')
    .setOpenAPIVersion('3.1.0')
    .addCookieAuth('loamledger_sign_in')
    .build();
  const document = SwaggerModule.createDocument(app, base, {
    operationIdFactory: (controller, method) => `${controller.replace(/Controller$/, '')}_${method}`,
  });
  return withNullTypes(document) as OpenAPIObject;
}

/** The keyword `nullable` is of OpenAPI 3.0; in 3.1 null is a type like any other. */
function withNullTypes(node: unknown): unknown {
  if (Array.isArray(node)) return node.map(withNullTypes);
  if (typeof node !== 'object' || node === null) return node;
  const { nullable, ...rest } = Object.fromEntries(
    Object.entries(node).map(([key, value]) => [key, withNullTypes(value)]),
  );
  if (nullable === undefined || typeof nullable === 'object') return nullable ? { ...rest, nullable } : rest;
  if (!nullable) return rest;
  if (typeof rest['type'] === 'string' && !rest['allOf']) {
    const choices = Array.isArray(rest['enum']) ? { enum: [...(rest['enum'] as unknown[]), null] } : {};
    return { ...rest, ...choices, type: [rest['type'], 'null'] };
  }
  const { description, ...schema } = rest;
  delete schema['type'];
  return {
    description,
    anyOf: [schema['allOf'] ? (schema['allOf'] as unknown[])[0] : schema, { type: 'null' }],
  };
}

/** Serves the document at `/api/v1/openapi.json`. */
export function serveOpenApi(app: NestFastifyApplication): void {
  let document: OpenAPIObject | undefined;
  app
    .getHttpAdapter()
    .getInstance()
    .get('/api/v1/openapi.json', async () => (document ??= openApiDocument(app)));
}
