import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { Member, PASSWORD } from './support/member.js';
import { asOwner } from './support/owner.js';
import { startService, type TestService } from './support/service.js';
import { foundTeam, invite, join, script, type Stored, type TestTeam } from './support/team.js';

let service: TestService;
let team: TestTeam;
beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.stop());
beforeEach(async () => {
  team = await foundTeam(service);
});

const listed = async () => (await team.mechanic.get(`${team.path}/tokens`).expect(200)).body as Stored[];

describe('a token', () => {
  it('is shown once and stored as a hash, also when the request is repeated', async () => {
    const wish = { name: 'Timing import', scopes: ['log-runs'] };
    const make = () =>
      team.mechanic.post(`${team.path}/tokens`, wish).set('idempotency-key', 'one').expect(201);
    const { token } = (await make()).body as { token: string };
    expect(token).toMatch(/^lml_[\w-]{43}$/);
    await make();
    const [first] = await listed();
    expect(first).toMatchObject({ ...wish, lastUsedAt: null });
    expect(first).not.toHaveProperty('token');
    const stored = await Promise.all(
      ['api_token', 'idempotency', 'audit_entry'].map((table) => asOwner(service, `select * from ${table}`)),
    );
    expect(JSON.stringify(stored)).not.toContain(token);
  });

  it('acts for its maker, and tells when it was last used', async () => {
    const reader = await script(service, team, ['read']);
    await reader.get(`${team.path}/runs`).expect(200);
    const [token] = await listed();
    expect(Date.now() - Date.parse(token?.['lastUsedAt'] as string)).toBeLessThan(60_000);
  });

  it('is worth nothing once it is revoked', async () => {
    const reader = await script(service, team, ['read']);
    const [token] = await listed();
    await team.mechanic.delete(`${team.path}/tokens/${token?.id}`).expect(204);
    await reader.get(`${team.path}/runs`).expect(401);
    expect(await listed()).toEqual([]);
    await team.mechanic.delete(`${team.path}/tokens/${token?.id}`).expect(404);
  });

  it('ends with its maker being taken out of the team', async () => {
    const second = await join(service, team, { role: 'mechanic' });
    const reader = await script(service, { path: team.path, mechanic: second }, ['read']);
    await reader.get(`${team.path}/runs`).expect(200);
    const members = (await team.mechanic.get(`${team.path}/members`).expect(200)).body as Stored[];
    const before = members.filter((member) => member['role'] === 'mechanic').at(-1);
    await team.mechanic.delete(`${team.path}/members/${before?.id}`).expect(204);
    await reader.get(`${team.path}/runs`).expect(401);
    await second.get(`${team.path}/runs`).expect(404);
    // Who comes back finds their tokens ended: nobody knows any more where those went.
    expect(await listed()).toEqual([]);
    const token = await invite(team, { role: 'mechanic' });
    const place = { email: second.email, password: PASSWORD, displayName: 'Back again', token };
    await second.post('/invitations/accept', place).expect(201);
    await reader.get(`${team.path}/runs`).expect(401);
    const { body } = await team.mechanic.get(`${team.path}/audit?kind=api-token`).expect(200);
    const [ended] = (body as { items: Stored[] }).items;
    expect(ended).toMatchObject({ action: 'changed', fields: ['revoked_at'], client: 'sign-in' });
  });

  it.each(['Bearer', 'Bearer ', 'Bearer x y', 'Basic abc', 'lml_abc', `Bearer ${'a'.repeat(9_000)}`])(
    'that is none gets nobody in: %s',
    async (authorization) => {
      const { status } = await new Member(service)
        .get(`${team.path}/runs`)
        .set('authorization', authorization);
      expect([401, 431]).toContain(status);
    },
  );

  it.each([[[]], [['read', 'read']], [['everything']], ['read'], [null]])(
    'is not made with the scopes %j',
    async (scopes) => {
      await team.mechanic.post(`${team.path}/tokens`, { name: 'Script', scopes }).expect(422);
    },
  );

  it('is not needed for a link either: the link is not kept in the answer to a repeated request', async () => {
    const { body } = await team.mechanic
      .post(`${team.path}/invitations`, { role: 'coach' })
      .set('idempotency-key', 'link')
      .expect(201);
    const kept = await asOwner(service, 'select answer from idempotency');
    expect(JSON.stringify(kept)).not.toContain((body as { path: string }).path);
  });
});

describe('what nobody needs any more', () => {
  it('is removed: old answers, ended sign-ins, old tries, and nothing else', async () => {
    await team.mechanic
      .post(`${team.path}/tracks`, { name: 'T', altitudeM: 1 })
      .set('idempotency-key', 'old');
    await asOwner(service, `update idempotency set created_at = now() - interval '31 days'`);
    await team.mechanic
      .post(`${team.path}/tracks`, { name: 'U', altitudeM: 1 })
      .set('idempotency-key', 'new');
    await asOwner(
      service,
      `insert into sign_in_try values ('old', 1, now() - interval '2 days'), ('new', 1, now())`,
    );
    const ended = await new Member(service).signUp();
    const signIns = async () => (await asOwner(service, 'select 1 from sign_in')).length;
    const before = await signIns();
    const { body } = await ended.get('/sign-ins').expect(200);
    await asOwner(service, 'update sign_in set expires_at = now() where id = $1', (body as Stored[])[0]?.id);
    const next = await startService({}, service.database);
    await expect.poll(signIns).toBe(before - 1);
    await next.stop();
    const keys = await asOwner(service, `select key from idempotency where key in ('old', 'new')`);
    expect(keys).toEqual([{ key: 'new' }]);
    const tries = await asOwner(service, `select key_hash from sign_in_try where key_hash in ('old', 'new')`);
    expect(tries).toEqual([{ key_hash: 'new' }]);
  });
});
