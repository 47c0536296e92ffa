import { readFileSync } from 'node:fs';
import type { IncomingMessage } from 'node:http';
import type { Test } from 'supertest';
import type { Member } from './member.js';

/** The part of JSON Schema that the document uses. */
export interface Schema {
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly items?: Schema;
  readonly anyOf?: readonly Schema[];
  readonly allOf?: readonly Schema[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly enum?: readonly unknown[];
  readonly format?: string;
  readonly example?: unknown;
  readonly description?: string;
}

/** A value that goes into the path, the query string or a header. */
interface Parameter {
  readonly name: string;
  readonly in: 'path' | 'query' | 'header';
  readonly required?: boolean;
  readonly schema?: Schema;
}

interface Operation {
  readonly parameters?: readonly Parameter[];
  readonly summary?: string;
  readonly 'x-roles'?: readonly string[];
  readonly 'x-token-scope'?: string;
  readonly requestBody?: { readonly content: Readonly<Record<string, { readonly schema: Schema }>> };
  readonly responses?: Readonly<Record<string, { readonly content?: Readonly<Record<string, unknown>> }>>;
}

export interface Document {
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
  readonly components: { readonly schemas: Readonly<Record<string, Schema>> };
}

export type Method = 'get' | 'post' | 'put' | 'delete';

export interface Route {
  readonly method: Method;
  /** As in the document, below `/api/v1`. */
  readonly path: string;
  readonly summary: string | undefined;
  /** Who may call it, as it declares: roles, `account` or `stranger`. */
  readonly callers: readonly string[];
  /** The scope that a token needs; undefined where no token may. */
  readonly tokenScope: string | undefined;
  /** What it takes in its query string, with what may stand there. */
  readonly query: readonly Parameter[];
  /** The names of those that are ids. */
  readonly queryIds: readonly string[];
  /** The schema of a JSON body, if it takes one. */
  readonly body: Schema | undefined;
  /** The type of a body that is no JSON message, if it takes one: a file. */
  readonly fileType: string | undefined;
  readonly fileExample: string;
  /** Its answer does not end by itself. */
  readonly streams: boolean;
}

/** The committed document: another test holds it against the code. */
export function readDocument(): Document {
  const file = new URL('../../../apps/api/openapi.json', import.meta.url);
  return JSON.parse(readFileSync(file, 'utf8')) as Document;
}

/** Every route of the document. */
export function routesOf(document: Document): Route[] {
  return Object.entries(document.paths).flatMap(([path, operations]) =>
    Object.entries(operations).map(([method, operation]) => ({
      method: method as Method,
      path: path.replace('/api/v1', ''),
      summary: operation.summary,
      callers: operation['x-roles'] ?? [],
      tokenScope: operation['x-token-scope'],
      ...queryOf(operation),
      body: operation.requestBody?.content['application/json']?.schema,
      ...fileOf(operation),
      streams: operation.responses?.['200']?.content?.['text/event-stream'] !== undefined,
    })),
  );
}

function queryOf({ parameters = [] }: Operation): Pick<Route, 'query' | 'queryIds'> {
  const query = parameters.filter((parameter) => parameter.in === 'query');
  const ids = query.filter(({ schema }) => JSON.stringify(schema ?? {}).includes('"uuid"'));
  return { query, queryIds: ids.map(({ name }) => name) };
}

function fileOf({ requestBody }: Operation): Pick<Route, 'fileType' | 'fileExample'> {
  const types = Object.entries(requestBody?.content ?? {});
  const [fileType, content] = types.find(([type]) => type !== 'application/json') ?? [];
  const example = content?.schema.example;
  return { fileType, fileExample: typeof example === 'string' ? example : '' };
}

/** The schema itself, behind references and beside `null`. */
export function resolved(document: Document, schema: Schema): Schema {
  const name = schema.$ref?.split('/').at(-1);
  if (name !== undefined) return resolved(document, document.components.schemas[name] ?? {});
  const inner = schema.allOf?.[0] ?? schema.anyOf?.find(({ type }) => type !== 'null');
  return inner ? resolved(document, inner) : schema;
}

/** Both ends of a bike have the examples of a fork, which no shock takes. */
const SHOCK_EXAMPLES: Readonly<Record<string, number>> = {
  'body.shock.pressurePsi': 180,
  'body.shock.travelUsedMm': 40,
  'body.shock.travelLeftMm': 25,
};

/** A complete body made of the document's own examples, with `idAt` in the places of ids; undefined leaves the example. */
export function exampleOf(
  document: Document,
  given: Schema,
  idAt: (at: string) => string | null | undefined = () => undefined,
  at = 'body',
): unknown {
  const schema = resolved(document, given);
  if (schema.format === 'uuid') {
    const id = idAt(at);
    return id === undefined ? (schema.example ?? null) : id;
  }
  if (schema.properties) {
    const fields = Object.entries(schema.properties);
    return Object.fromEntries(
      fields.map(([name, field]) => [name, exampleOf(document, field, idAt, `${at}.${name}`)]),
    );
  }
  const isOfIds = schema.items && resolved(document, schema.items).format === 'uuid';
  if (schema.items && (schema.example === undefined || (isOfIds && idAt(`${at}.0`) !== undefined)))
    return [exampleOf(document, schema.items, idAt, `${at}.0`)];
  return SHOCK_EXAMPLES[at] ?? schema.example ?? null;
}

/** The id of nothing anywhere. */
export const ID_OF_NOBODY = '01990b5e-7c3a-7b1e-9f52-3a6f0d2c4e11';

/** Sends a route with its example body to ids of no one's, as `member`, in the team of `teamPath`. */
export function call(document: Document, member: Member, route: Route, teamId: string, body?: unknown) {
  const path = route.path.replace('{teamId}', teamId).replaceAll(/\{\w+\}/g, ID_OF_NOBODY);
  const request = member.send(route.method, path);
  if (route.method === 'put') void request.set('if-match', '"1"');
  if (route.streams) return request.buffer(false).parse(hangUp);
  if (route.fileType) return request.set('content-type', route.fileType).send(route.fileExample);
  const sent = body ?? (route.body && exampleOf(document, route.body));
  return sent === undefined ? request : request.send(sent as object);
}

/** Ends an answer that would not end by itself, once its head is there; a refusal is read as it is. */
const hangUp: Parameters<Test['parse']>[0] = (answer, done) => {
  const stream = answer as unknown as IncomingMessage;
  if (stream.headers['content-type']?.includes('event-stream')) {
    stream.destroy();
    done(null, {});
    return;
  }
  let text = '';
  stream.setEncoding('utf8');
  stream.on('data', (part: string) => (text += part));
  stream.on('end', () => done(null, JSON.parse(text)));
};
