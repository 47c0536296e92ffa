import type { Response } from 'supertest';
import type { Member } from './member.js';
import {
  exampleOf,
  ID_OF_NOBODY,
  readDocument,
  resolved,
  routesOf,
  type Route,
  type Schema,
} from './open-api.js';

const api = readDocument();

/** One place of a request where an id goes: in the path, in the query string or somewhere in the body. */
export interface Place extends Route {
  readonly route: string;
  readonly where: string;
}

/** An id of each kind of thing, by the names that fields and paths give it. */
export type Ids = ReadonlyMap<string, string>;

/** Who asks in which team, with the ids that stand in all places but the one that is tried. */
export interface Caller {
  readonly member: Member;
  readonly teamId: string;
  readonly own: Ids;
}

/** Every place of every route of a team; where a list starts is no id of something that is asked for. */
export const ID_PLACES: readonly Place[] = routesOf(api)
  .filter(({ path, streams }) => path.includes('{teamId}') && !streams)
  .flatMap((route) => {
    const { method, path, body, queryIds } = route;
    const place = (where: string): Place => ({ ...route, route: `${method} ${path}`, where });
    const inPath = [...path.matchAll(/\{(\w*[iI]d)\}/g)].map(([, name]) => `path ${name}`);
    return [
      ...inPath.filter((name) => name !== 'path teamId').map(place),
      ...queryIds.filter((name) => name !== 'cursor').map((name) => place(`query ${name}`)),
      ...(body ? idsIn(body, 'body').map(place) : []),
    ];
  });

/** The things of the route's list or record: `bikes` of `/teams/{teamId}/bikes/{id}`. */
export const thingsOf = ({ path }: Pick<Place, 'path'>): string => path.split('/')[3] ?? '';

/** What the place asks an id of, by a name of `Ids`. */
export function kindAt({ path, where }: Place): string {
  const name = nameOf(where.replace(' ', '.'));
  return name === 'id' ? thingsOf({ path }) : name;
}

function idsIn(given: Schema, at: string): string[] {
  const schema = resolved(api, given);
  if (schema.format === 'uuid') return [at];
  if (schema.items) return idsIn(schema.items, `${at}.0`);
  return Object.entries(schema.properties ?? {}).flatMap(([name, field]) => idsIn(field, `${at}.${name}`));
}

/** The last name in an address of a body, that of a list for what is in it. */
const nameOf = (at: string): string => at.split('.').findLast((part) => part !== '0') ?? '';

/** The answer to the caller, with one id in its place and the caller's own in all others. */
export async function answerTo(
  { member, teamId, own }: Caller,
  place: Place,
  id: string,
  version = 1,
): Promise<Response> {
  const { method, path, where, query, body, fileType, fileExample } = place;
  const filled = path
    .replace('{teamId}', teamId)
    .replace('{end}', 'fork')
    .replaceAll(/\{(\w+)\}/g, (_, name: string) => {
      return where === `path ${name}`
        ? id
        : (own.get(name === 'id' ? thingsOf(place) : name) ?? ID_OF_NOBODY);
    });
  const pairs = query
    .filter(({ name, required }) => required || where === `query ${name}`)
    .map(({ name, schema }): [string, string] => {
      if (where === `query ${name}`) return [name, id];
      return [name, own.get(name) ?? String(schema?.example)];
    });
  const search = pairs.length > 0 ? `?${new URLSearchParams(pairs)}` : '';
  const request = member.send(method, filled + search);
  if (method === 'put') void request.set('if-match', `"${version}"`);
  if (fileType !== undefined) return request.set('content-type', fileType).send(fileExample);
  if (!body) return request;
  const idAt = (at: string) => (at === where ? id : (own.get(nameOf(at)) ?? null));
  return request.send(exampleOf(api, body, idAt) as object);
}

/** The answers to the id of nothing, and then to `id`, in the same place. */
export async function besideNothing(
  caller: Caller,
  place: Place,
  id: string,
): Promise<Record<'nothing' | 'found', Response>> {
  const nothing = await answerTo(caller, place, ID_OF_NOBODY);
  // A change that ignores the id was made by the first request.
  const { version } = nothing.body as { version?: number };
  return { nothing, found: await answerTo(caller, place, id, version) };
}

/** The answer in words that do not change from one request to the next. */
export const words = ({ status, text }: Response): string =>
  `${status} ${text
    .replaceAll(/[\da-f]{8}-[\da-f]{4}-[\da-f]{4}-[\da-f]{4}-[\da-f]{12}/g, 'ID')
    .replaceAll(/"version":\d+/g, '"version":V')
    .replaceAll(/\d{4}-\d\d-\d\dT[\d:.]+Z/g, 'TIME')}`;
