import fc from 'fast-check';
import { exampleOf, ID_OF_NOBODY, type Document, type Route } from '../api/support/open-api.js';
import { spoiledBody } from './garbage-bodies.js';
import { brokenBody, hostileHeader, hostileText, inAddress, wrongType } from './hostile-values.js';

/** One request as bytes on the line: what a program with a fault, or a person with a grudge, could send. */
export interface GarbageRequest {
  readonly route: Route;
  readonly method: string;
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Buffer | undefined;
}

/** Ids that are there, by the names that paths and fields give them; the first of each go together. */
export type RealIds = ReadonlyMap<string, readonly string[]>;

/** The parts of a request; one of them is spoiled, so that the others bring it past the door. */
type Part = 'path' | 'query' | 'headers' | 'body';

/** Requests to `route` in the team of `ids`, each right but for one or a few places. */
export function garbageFor(document: Document, route: Route, ids: RealIds): fc.Arbitrary<GarbageRequest> {
  return spoiledParts(route).chain((spoiled) =>
    fc.record({
      route: fc.constant(route),
      method: fc.constant(route.method.toUpperCase()),
      path: fc
        .tuple(pathOf(route, ids, spoiled.has('path')), queryOf(route, ids, spoiled.has('query')))
        .map(([path, query]) => `/api/v1${path}${query && '?'}${query}`),
      headers: headersOf(route, spoiled.has('headers')),
      body: bodyOf(document, route, ids, spoiled.has('body')),
    }),
  );
}

function spoiledParts(route: Route): fc.Arbitrary<ReadonlySet<Part>> {
  const hasId = /\{(?!teamId)/.test(route.path);
  const weights: Record<Part, number> = {
    path: hasId ? 1 : 0,
    query: route.query.length > 0 ? 4 : 1,
    headers: 1,
    body: takesBody(route) ? 8 : 1,
  };
  const one = Object.entries(weights).map(([part, weight]) => {
    return { arbitrary: fc.constant(new Set([part as Part])), weight };
  });
  const all = { arbitrary: fc.constant(new Set(Object.keys(weights) as Part[])), weight: 1 };
  return fc.oneof(...one, all);
}

const takesBody = ({ body, fileType }: Route): boolean => body !== undefined || fileType !== undefined;

/** Mostly the ids that go together, now and then another of the team's. */
function realId(ids: RealIds, name: string): fc.Arbitrary<string> {
  const [first = ID_OF_NOBODY, ...others] = ids.get(name) ?? [];
  if (others.length === 0) return fc.constant(first);
  return fc.oneof(
    { arbitrary: fc.constant(first), weight: 4 },
    { arbitrary: fc.constantFrom(...others), weight: 1 },
  );
}

const hostileSegment = fc.oneof(
  fc.constant(ID_OF_NOBODY),
  hostileText.map(inAddress),
  fc.constantFrom('%00', '%ff', '%', '..%2f..', '.'),
);

function pathOf({ path }: Route, ids: RealIds, isSpoiled: boolean): fc.Arbitrary<string> {
  const own = path.replace('{teamId}', ids.get('teamId')?.[0] ?? '');
  const things = /(\w[\w-]*)\/\{id\}/.exec(own)?.[1] ?? '';
  const names = [...own.matchAll(/\{(\w+)\}/g)].map(([, name = '']) => name);
  const right = (name: string): fc.Arbitrary<string> =>
    name === 'end' ? fc.constantFrom('fork', 'shock') : realId(ids, name === 'id' ? things : name);
  const spoiled = fc.nat({ max: Math.max(0, names.length - 1) });
  return spoiled.chain((at) =>
    fc
      .tuple(...names.map((name, i) => (isSpoiled && i === at ? hostileSegment : right(name))))
      .map((values) => own.replaceAll(/\{\w+\}/g, () => values.shift() ?? '')),
  );
}

/** What the document declares for the route, with what it says may stand there; spoiled, with what may not. */
function queryOf({ query }: Route, ids: RealIds, isSpoiled: boolean): fc.Arbitrary<string> {
  const right = query.map(({ name, required, schema }) => {
    const { enum: allowed, example, format, minimum = 1, type } = schema ?? {};
    const value = (): fc.Arbitrary<unknown> => {
      if (format === 'uuid') return realId(ids, name === 'cursor' ? 'runs' : name);
      if (allowed) return fc.constantFrom(...allowed);
      return fc.constant(example ?? (type === 'string' ? '' : minimum));
    };
    const pair = value().map((one) => [name, String(one)] as const);
    return required ? pair : fc.option(pair, { nil: null, freq: 1 });
  });
  const declared = query.map(({ name }) => name);
  const wrong = fc.tuple(
    // One that nobody declared now and then.
    fc.constantFrom(...declared, ...declared, '__proto__', 'unknown'),
    hostileText.map((text) => text.slice(0, 2_000)),
  );
  const spoiling = isSpoiled ? fc.array(wrong, { minLength: 1, maxLength: 2 }) : fc.constant([]);
  return fc.tuple(fc.tuple(...right), spoiling).map(([rightOnes, wrongOnes]) => {
    const pairs = new Map([...rightOnes.filter((pair) => pair !== null), ...wrongOnes]);
    return [...pairs].map(([name, text]) => `${name}=${inAddress(text)}`).join('&');
  });
}

function headersOf(route: Route, isSpoiled: boolean): fc.Arbitrary<Record<string, string>> {
  const type = route.fileType ?? 'application/json';
  if (!isSpoiled) {
    // A body that is named and does not come is refused at the door.
    const right = {
      ...(takesBody(route) && { 'content-type': type }),
      ...(route.method === 'put' && { 'if-match': '"1"' }),
    };
    return fc.option(fc.uuid()).map((key) => (key === null ? right : { ...right, 'idempotency-key': key }));
  }
  return fc.record(
    {
      'if-match': hostileHeader,
      'idempotency-key': hostileHeader,
      'content-type': fc.oneof(fc.constant(type), wrongType),
      accept: hostileHeader,
    },
    { requiredKeys: ['content-type'] },
  );
}

function bodyOf(
  document: Document,
  route: Route,
  ids: RealIds,
  isSpoiled: boolean,
): fc.Arbitrary<Buffer | undefined> {
  if (!takesBody(route)) return isSpoiled ? brokenBody : fc.constant(undefined);
  const example =
    route.body &&
    exampleOf(
      document,
      route.body,
      (at) => ids.get(at.split('.').findLast((part) => part !== '0') ?? '')?.[0],
    );
  if (isSpoiled) return spoiledBody(route, example);
  return fc.constant(Buffer.from(route.body ? JSON.stringify(example) : route.fileExample));
}
