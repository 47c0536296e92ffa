import type { Server } from 'node:http';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { Member, PASSWORD } from './support/member.js';
import { asOwner } from './support/owner.js';
import { startService, type TestService } from './support/service.js';
import { foundTeam, invite, script, type TestTeam } from './support/team.js';

const METRICS_TOKEN = 'a token for those who look after it';

let service: TestService;
let team: TestTeam;
let lines: string[];
beforeAll(async () => {
  service = await startService({ LOG_LEVEL: 'info', METRICS_TOKEN });
  team = await foundTeam(service);
});
afterAll(() => service.stop());
afterEach(() => vi.restoreAllMocks());

/** Writes down what the service logs from here on. */
function listen(): void {
  lines = [];
  for (const stream of [process.stdout, process.stderr]) {
    vi.spyOn(stream, 'write').mockImplementation((text) => {
      lines.push(String(text));
      return true;
    });
  }
}
const logged = () =>
  lines
    .flatMap((text) => text.split('\n'))
    .filter((line) => line.startsWith('{'))
    .map((line) => JSON.parse(line) as Record<string, unknown>);
/** An answer is logged, and counted, after it was sent. */
const soonLogged = (wanted: Record<string, unknown>) =>
  expect.poll(logged).toContainEqual(expect.objectContaining(wanted));

describe('the log', () => {
  it('tells of each answer by which route it went, under the id that an error names', async () => {
    listen();
    await team.mechanic.get(`${team.path}/bikes/${team.bike.id}`).expect(200);
    await soonLogged({ message: 'answered', method: 'GET', status: 200, level: 'log' });
    const { body } = await team.mechanic.get(`${team.path}/bikes/${team.track.id}`).expect(404);
    const { requestId } = body as { requestId: string };
    await soonLogged({ requestId, route: '/api/v1/teams/:teamId/bikes/:id', status: 404 });
  });

  it('holds no password, no token, no address of a person and nothing that was sent, whatever goes wrong', async () => {
    const link = await invite(team, { role: 'coach' });
    const token = `Bearer ${await tokenOf()}`;
    const secrets = [PASSWORD, link, token.slice(7), team.mechanic.email, 'Only for us'];
    listen();
    const { email } = team.mechanic;
    const member = new Member(service);
    member.keep(await member.post('/sign-ins', { email, password: PASSWORD }).expect(201));
    secrets.push(member.cookieHeader.split('=')[1] ?? '');
    await member.post('/sign-ins', { email, password: 'Only for us: wrong' }).expect(401);
    await member.post('/sign-ins', { email, password: 7, note: 'Only for us' }).expect(422);
    await member.post('/invitations/accept', {
      email,
      token: link,
      password: 'Only for us',
      displayName: 'x',
    });
    await member.get(`${team.path}/bikes?cursor=Only+for+us`).set('authorization', token);
    await member.get(`/accounts/current?password=Only%20for%20us&token=${link}`);
    await member.post('/sign-ins', '{"password": "Only for us').set('content-type', 'application/json');
    // Our own mistakes too: the database refuses what no check before it has refused, and quotes it.
    await asOwner(service, `alter table track add constraint no_names check (name not like 'Only%')`);
    const track = { name: 'Only for us', altitudeM: 1 };
    const failed = await team.mechanic.post(`${team.path}/tracks`, track).expect(500);
    await asOwner(service, 'alter table track drop constraint no_names');
    const { requestId } = failed.body as { requestId: string };
    await soonLogged({ message: 'answered', requestId, status: 500 });
    await soonLogged({ message: 'unexpected', requestId, code: '23514', constraint: 'no_names' });
    for (const secret of secrets) {
      expect(secret.length).toBeGreaterThan(5);
      expect(lines.join('')).not.toContain(secret);
      expect(lines.join('')).not.toContain(encodeURIComponent(secret));
    }
  });

  const tokenOf = async () => {
    const { body } = await team.mechanic
      .post(`${team.path}/tokens`, { name: 'Script', scopes: ['read'] })
      .expect(201);
    return (body as { token: string }).token;
  };
});

describe('the metrics', () => {
  const metrics = (token?: string, of: TestService = service) => {
    const call = new Member({ url: of.url.replace('/api/v1', '') }).get('/metrics');
    return token === undefined ? call : call.set('authorization', `Bearer ${token}`);
  };

  it('are for who knows the token, and nowhere without one', async () => {
    await metrics(METRICS_TOKEN)
      .expect(200)
      .expect('content-type', /^text\/plain; version=0\.0\.4/);
    await metrics().expect(404);
    await metrics(`${METRICS_TOKEN}s`).expect(404);
    await (await script(service, team, ['read'])).get('/metrics').expect(404);
    const without = await startService({}, service.database);
    try {
      await metrics(METRICS_TOKEN, without).expect(404);
      await metrics('', without).expect(404);
    } finally {
      await without.stop();
    }
  });

  it('count requests by route and status, and name no team, person or thing', async () => {
    await team.mechanic.get(`${team.path}/bikes/${team.bike.id}`).expect(200);
    await team.mechanic.get(`${team.path}/bikes/${team.track.id}`).expect(404);
    await team.mechanic.get('/nowhere/at-all').expect(404);
    const count = (text: string, route: string, status: number) =>
      Number(
        new RegExp(
          `http_request_duration_seconds_count\\{method="GET",route="${route}",status="${status}"\\} (\\d+)`,
        ).exec(text)?.[1],
      );
    const read = async () => (await metrics(METRICS_TOKEN).expect(200)).text;
    await expect.poll(async () => count(await read(), 'none', 404)).toBeGreaterThan(0);
    const text = await read();
    const route = '/api/v1/teams/:teamId/bikes/:id';
    expect(count(text, route, 200)).toBeGreaterThan(0);
    expect(count(text, route, 404)).toBeGreaterThan(0);
    for (const name of [team.id, team.bike.id, team.mechanic.email, 'nowhere'])
      expect(text).not.toContain(name);
    expect(text).not.toMatch(/[0-9a-f]{8}-[0-9a-f]{4}/);
  });

  it('tell of the process, its connections to the database, its streams and its computing', async () => {
    const { text } = await metrics(METRICS_TOKEN).expect(200);
    const value = (name: string) => Number(new RegExp(`^${name} (\\S+)$`, 'm').exec(text)?.[1]);
    expect(value('process_resident_memory_bytes')).toBeGreaterThan(10e6);
    expect(value('loamledger_database_connections')).toBeGreaterThan(0);
    expect(value('loamledger_database_connections_idle')).toBeGreaterThan(0);
    expect(value('loamledger_database_requests_waiting')).toBe(0);
    expect(value('loamledger_event_streams')).toBe(0);
    expect(value('loamledger_event_listening')).toBe(0);
    expect(value('loamledger_computations_waiting')).toBe(0);
  });
});

it('waits a while for a request that comes slowly, and not for ever', () => {
  const { requestTimeout, headersTimeout } = service.app.getHttpServer() as Server;
  const [shortest, longest] = [60_000, 600_000];
  expect(requestTimeout).toBeGreaterThanOrEqual(shortest);
  expect(requestTimeout).toBeLessThanOrEqual(longest);
  expect(headersTimeout).toBeLessThanOrEqual(requestTimeout);
});
