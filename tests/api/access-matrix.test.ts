import { readFileSync } from 'node:fs';
import type { Response } from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accessTable } from '../../apps/api/src/platform/http/access-table.js';
import { withConventions } from '../../apps/api/src/platform/http/open-api-conventions.js';
import { openApiDocument } from '../../apps/api/src/platform/http/open-api.js';
import { Member } from './support/member.js';
import { call, readDocument, routesOf, type Route } from './support/open-api.js';
import { startService, type TestService } from './support/service.js';
import { foundTeam, script, type TestTeam } from './support/team.js';

const SCOPES = ['read', 'log-runs', 'change-set-ups', 'edit-records'];
const ROLES = ['mechanic', 'coach', 'rider'];
const UNKNOWN_TEAM = '01990b5e-7c3a-7b1e-9f52-3a6f0d2c4e12';

const api = readDocument();
const ROUTES = routesOf(api);
const OF_TEAM = ROUTES.filter(({ path }) => path.includes('{teamId}'));
const OTHERS = ROUTES.filter(({ path }) => !path.includes('{teamId}'));

let service: TestService;
let team: TestTeam;
let other: TestTeam;
/** An account, signed in, that is a member of no team at all. */
let inNoTeam: Member;

beforeAll(async () => {
  service = await startService();
  team = await foundTeam(service);
  other = await foundTeam(service, 'Team with a name to find');
  inNoTeam = await new Member(service).signUp();
});
afterAll(() => service.stop());

const told = ({ status, body }: Response) => [status, (body as { code?: string }).code];
const memberIn = (role: string, of: TestTeam) =>
  ({ mechanic: of.mechanic, coach: of.coach, rider: of.riderMember })[role] ?? new Member(service);

/** An answer that only somebody who was let in can get: the example may refer to things that are not there. */
const isLetIn = ({ status }: Response) => [200, 201, 204, 404, 409, 412, 422].includes(status);

describe('what is declared', () => {
  it('is roles for every route of a team, and an account or anybody for every other', () => {
    const callersOf = ({ callers }: Route) => callers.toSorted();
    for (const route of OF_TEAM) {
      expect(route.callers).not.toEqual([]);
      expect(ROLES).toEqual(expect.arrayContaining(callersOf(route)));
      // Whatever is done in a team, its mechanic may do.
      expect(route.callers).toContain('mechanic');
    }
    for (const route of OTHERS) expect([['account'], ['stranger']]).toContainEqual(callersOf(route));
  });

  it('is on the page that people read', () => {
    const page = readFileSync(new URL('../../docs/access.md', import.meta.url), 'utf8');
    expect(page).toBe(accessTable(openApiDocument(service.app)));
    expect(page.match(/^\| `/gm)).toHaveLength(ROUTES.length);
  });

  it('cannot be forgotten: no document is made of a route that says nothing', () => {
    const silent = { responses: {} };
    const document = { ...openApiDocument(service.app), paths: { '/api/v1/forgotten': { post: silent } } };
    expect(() => withConventions(document)).toThrow('POST /api/v1/forgotten');
  });
});

describe('every route of a team', () => {
  it.each(OF_TEAM)('$method $path asks a stranger to sign in, whichever team it is', async (route) => {
    for (const teamId of [team.id, UNKNOWN_TEAM]) {
      const answer = await call(api, new Member(service), route, teamId);
      expect(told(answer)).toEqual([401, 'sign-in.required']);
    }
  });

  it.each(OF_TEAM)('$method $path lets in the roles that it declares, and no other', async (route) => {
    for (const role of ROLES) {
      const answer = await call(api, memberIn(role, team), route, team.id);
      if (!route.callers.includes(role))
        expect([role, ...told(answer)]).toEqual([role, 403, 'role.not-allowed']);
      else expect([role, answer.status, isLetIn(answer)]).toEqual([role, answer.status, true]);
    }
  });

  it.each(OF_TEAM)(
    "$method $path answers for another's team as for one that does not exist, to its members and to who is in none",
    async (route) => {
      for (const member of [...ROLES.map((role) => memberIn(role, other)), inNoTeam]) {
        const [others, nobodys] = [
          await call(api, member, route, team.id),
          await call(api, member, route, UNKNOWN_TEAM),
        ];
        expect(told(others)).toEqual([404, 'team.not-found']);
        // Word for word the same, but for the id that was asked for.
        const words = (answer: Response, id: string) =>
          JSON.stringify({ ...(answer.body as object), requestId: '' }).replaceAll(id, 'ID');
        expect(words(others, team.id)).toBe(words(nobodys, UNKNOWN_TEAM));
      }
    },
  );
});

describe('a token', () => {
  const scripts = new Map<string, Member>();
  let everything: Member;
  let others: Member;

  beforeAll(async () => {
    for (const scope of SCOPES) scripts.set(scope, await script(service, team, [scope]));
    everything = await script(service, team, SCOPES);
    others = await script(service, other, SCOPES);
  });

  it.each(ROUTES.filter(({ callers }) => !callers.includes('stranger')))(
    '$method $path is open to the scope that it declares, and to no other',
    async (route) => {
      for (const [scope, member] of scripts) {
        const answer = await call(api, member, route, team.id);
        if (scope === route.tokenScope)
          expect([scope, answer.status, isLetIn(answer)]).toEqual([scope, answer.status, true]);
        else expect([scope, ...told(answer)]).toEqual([scope, 403, 'token.scope-missing']);
      }
      const answer = await call(api, everything, route, team.id);
      if (route.tokenScope === undefined) expect(told(answer)).toEqual([403, 'token.scope-missing']);
    },
  );

  it.each(OF_TEAM)('$method $path does not exist for a token of another team', async (route) => {
    expect(told(await call(api, others, route, team.id))).toEqual([404, 'team.not-found']);
  });

  it('opens no route of people and their sign-ins, and writes nothing that only people may', () => {
    const forPeople = ROUTES.filter(({ tokenScope }) => tokenScope === undefined).map(({ path }) => path);
    for (const path of [
      '/sign-ins',
      '/teams/{teamId}/tokens',
      '/teams/{teamId}/audit',
      '/teams/{teamId}/invitations',
    ]) {
      expect(forPeople).toContain(path);
    }
    for (const { method, tokenScope } of ROUTES)
      if (tokenScope === 'read') expect(['get', 'post']).toContain(method);
  });
});

describe('every other route', () => {
  it.each(OTHERS)('$method $path asks to sign in unless it is for anybody', async (route) => {
    const answer = await call(api, new Member(service), route, team.id);
    const asksToSignIn = answer.status === 401 && told(answer)[1] === 'sign-in.required';
    expect(asksToSignIn).toBe(!route.callers.includes('stranger'));
    expect(answer.status).toBeLessThan(500);
  });

  it.each(OTHERS.filter(({ callers }) => callers.includes('account')))(
    '$method $path is for any account, in whatever team or none',
    async (route) => {
      const alone = await new Member(service).signUp();
      const answer = await call(api, alone, route, team.id);
      expect([answer.status, isLetIn(answer)]).toEqual([answer.status, true]);
    },
  );
});
