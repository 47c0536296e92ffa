import type { OpenAPIObject } from '@nestjs/swagger';
import { EXTENSION } from './access.js';

type Operation = NonNullable<OpenAPIObject['paths'][string]['get']>;

type Schema = Extract<
  NonNullable<NonNullable<OpenAPIObject['components']>['schemas']>[string],
  { type?: unknown }
>;

export const METHODS = ['get', 'post', 'put', 'delete'] as const;
const UUID = { type: 'string', format: 'uuid' } as const;
const PROBLEM = '#/components/schemas/Problem';

/**
 * Writes into the document what holds for every route and stands in no controller: the ids in its path, the
 * headers of writes, and the one shape of errors.
 * @throws Error that names every route which does not say who may call it.
 */
export function withConventions(document: OpenAPIObject): OpenAPIObject {
  refuseUndeclared(document);
  for (const [path, item] of Object.entries(document.paths)) {
    for (const method of METHODS) {
      const operation = item[method];
      if (!operation) continue;
      declarePathParameters(path, operation);
      declareHeaders(method, path, operation);
      operation.responses['default'] = {
        description: 'A problem, by RFC 9457.',
        content: { 'application/problem+json': { schema: { $ref: PROBLEM } } },
      };
    }
  }
  const schemas = { ...document.components?.schemas, Problem: problemSchema() };
  return withNullTypes({ ...document, components: { ...document.components, schemas } }) as OpenAPIObject;
}

function refuseUndeclared(document: OpenAPIObject): void {
  const undeclared = Object.entries(document.paths).flatMap(([path, item]) =>
    METHODS.filter((method) => item[method] && !(EXTENSION.callers in item[method])).map(
      (method) => `${method.toUpperCase()} ${path}`,
    ),
  );
  if (undeclared.length === 0) return;
  throw new Error(
    `Say who may call it, with @Roles, @AnyAccount or @Public of platform/http/access.ts: ${undeclared.join(', ')}`,
  );
}

function declarePathParameters(path: string, operation: Operation): void {
  const declared = (operation.parameters ?? []).map((parameter) => 'name' in parameter && parameter.name);
  const named = [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => name ?? '');
  const missing = named.filter((name) => !declared.includes(name));
  operation.parameters = [
    ...missing.map((name) => ({ name, in: 'path' as const, required: true, schema: { ...UUID } })),
    ...(operation.parameters ?? []),
  ];
}

function declareHeaders(method: (typeof METHODS)[number], path: string, operation: Operation): void {
  if (method === 'put') {
    addHeader(operation, 'If-Match', true, 'The ETag of the version that is to be changed.');
  }
  const isTeamWrite = method === 'post' && path.includes('/teams');
  if (isTeamWrite) {
    addHeader(operation, 'Idempotency-Key', false, 'Makes a repeated request one: it gets the first answer.');
  }
}

function addHeader(operation: Operation, name: string, required: boolean, description: string): void {
  const others = (operation.parameters ?? []).filter(
    (parameter) => !('name' in parameter) || parameter.name.toLowerCase() !== name.toLowerCase(),
  );
  operation.parameters = [
    ...others,
    { name, in: 'header', required, description, schema: { type: 'string' } },
  ];
}

function problemSchema(): Schema {
  const text = (description: string, example: string): Schema => ({ type: 'string', description, example });
  return {
    type: 'object',
    required: ['type', 'title', 'status', 'detail', 'code', 'requestId', 'errors'],
    properties: {
      type: text('A URN that names the kind of problem.', 'urn:loamledger:problem:request.invalid'),
      title: text('The kind of problem in words.', 'Some fields are not allowed'),
      status: { type: 'integer', description: 'HTTP status.', example: 422 },
      detail: text('This problem in words.', 'timeS must be a number from 1 to 7200 s.'),
      code: text('Stable code of the problem.', 'request.invalid'),
      requestId: text(
        'Under this id the service logged it, if it did.',
        '0b7c7a9e-4f0d-4a53-9d0b-c1e2d3f4a5b6',
      ),
      errors: {
        type: 'array',
        description: 'The fields that were refused.',
        items: {
          type: 'object',
          required: ['field', 'given', 'allowed'],
          properties: {
            field: text('Path of the field in the request.', 'timeS'),
            given: { description: 'What was given, cut if long.', example: 0 },
            allowed: text('What would be allowed.', 'a number from 1 to 7200 s'),
          },
        },
      },
    },
  };
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
