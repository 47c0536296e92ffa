import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  besideNothing,
  ID_PLACES,
  kindAt,
  thingsOf,
  words,
  type Caller,
  type Ids,
} from './support/id-places.js';
import { asOwner } from './support/owner.js';
import { readDocument, routesOf } from './support/open-api.js';
import { startService, type TestService } from './support/service.js';
import { digestOf, enterThings } from './support/team-things.js';
import { foundTeam } from './support/team.js';

/** Part of every name in the other team: no answer may hold it. */
const FOREIGN = 'Foreign';
const LISTS = routesOf(readDocument()).filter(({ queryIds }) => queryIds.includes('cursor'));

let service: TestService;
beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.stop());

describe.each(['mechanic', 'coach'] as const)("another team's id, sent by a %s,", (role) => {
  const places = ID_PLACES.filter(({ callers }) => callers.includes(role));
  let caller: Caller;
  let foreign: Ids;
  let foreignRows: () => Promise<Record<string, string>>;
  let before: Record<string, string>;

  beforeAll(async () => {
    const team = await foundTeam(service);
    const other = await foundTeam(service, `${FOREIGN} team`);
    caller = { member: team[role], teamId: team.id, own: await enterThings(service, team) };
    foreign = await enterThings(service, other);
    for (const table of ['rider', 'bike', 'track', 'spring_unit', 'test_plan', 'api_token']) {
      await asOwner(service, `update ${table} set name = '${FOREIGN} ' || name where team_id = $1`, other.id);
    }
    foreignRows = () => digestOf(service, { team_id: other.id });
    before = await foreignRows();
  });

  it('is tried in every place of every route that takes one', () => {
    expect(places.length).toBeGreaterThan(role === 'mechanic' ? 80 : 60);
    const unknown = places.filter((place) => !foreign.has(kindAt(place)));
    expect(unknown.map(({ route, where }) => `${route}: ${where}`)).toEqual([]);
  });

  it.each(places)('is answered as the id of nothing: $route, $where', async (place) => {
    const { nothing, found } = await besideNothing(caller, place, foreign.get(kindAt(place)) ?? '');
    expect(found.text).not.toContain(FOREIGN);
    expect(words(found)).toBe(words(nothing));
    if (place.where.startsWith('path')) expect([404, 422]).toContain(found.status);
    expect(found.status).toBeLessThan(500);
  });

  it.each(LISTS.filter(({ callers }) => callers.includes(role)))(
    'as the place to go on from tells nothing: $method $path',
    async (list) => {
      // Ids are in the order of their making: only what was made between two of them could tell them apart.
      const theirs = foreign.get(thingsOf(list)) ?? foreign.get('bikeId') ?? '';
      const beside = theirs.slice(0, -1) + (theirs.endsWith('0') ? '1' : '0');
      const path = list.path
        .replace('{teamId}', caller.teamId)
        .replace('{id}', caller.own.get(thingsOf(list)) ?? '');
      const [found, nothing] = [
        await caller.member.get(`${path}?cursor=${theirs}`).expect(200),
        await caller.member.get(`${path}?cursor=${beside}`).expect(200),
      ];
      expect(found.text).not.toContain(FOREIGN);
      expect(found.body).toEqual(nothing.body);
    },
  );

  it('has changed nothing of theirs', async () => {
    expect(Object.keys(before).length).toBeGreaterThan(20);
    expect(await foreignRows()).toEqual(before);
  });

  it('is refused for being theirs: of their own the answer is another one in nearly every place', async () => {
    const alike: string[] = [];
    // What is closed or removed is not there for the next.
    const lasting = places.filter(({ method, path }) => method !== 'delete' && !path.endsWith('/closing'));
    for (const place of lasting) {
      const { nothing, found } = await besideNothing(caller, place, caller.own.get(kindAt(place)) ?? '');
      if (words(found) === words(nothing)) alike.push(`${place.route}, ${place.where}: ${words(found)}`);
    }
    // Where something else is refused first: the example of a plan has one arm, that of a bike one row of leverage.
    expect(alike.length, alike.join('\n')).toBeLessThan(lasting.length / 8);
  });
});
