import { once } from 'node:events';
import { Client } from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readConfig } from '../../apps/api/src/config/config.js';
import { createApp } from '../../apps/api/src/create-app.js';
import { TeamStreams } from '../../apps/api/src/modules/events/team-streams.js';
import { LISTENER_NAME } from '../../apps/api/src/platform/live/change-listener.js';
import { openEvents, type OpenEvents } from './support/events.js';
import { startService, type TestService } from './support/service.js';
import { foundTeam, join, SETUP, type Stored, type TestTeam } from './support/team.js';
import type { Member } from './support/member.js';
import { without } from './support/without.js';

let service: TestService;
/** A second process's worth of service over the same database. */
let second: Pick<TestService, 'url' | 'stop'>;
let team: TestTeam;
let other: TestTeam;
const opened: OpenEvents[] = [];

beforeAll(async () => {
  service = await startService();
  const app = await createApp(
    readConfig({
      DATABASE_URL: service.database.ownerUrl,
      LOG_LEVEL: 'error',
      DATABASE_POOL_SIZE: '2',
    }),
  );
  await app.listen(0, '127.0.0.1');
  second = { url: `${await app.getUrl()}/api/v1`, stop: () => app.close() };
  team = await foundTeam(service);
  other = await foundTeam(service, 'Team 2');
});
afterAll(async () => {
  for (const stream of opened) stream.close();
  await second.stop();
  await service.stop();
});

async function listen(member: Member, at: Pick<TestService, 'url'> = service, of = team) {
  const stream = await openEvents(`${at.url}${of.path}/events`, member.cookieHeader);
  opened.push(stream);
  await stream.next('ready');
  return stream;
}

/** Cuts the connections of all listeners, as a database that is started anew does. */
async function endListeners(): Promise<void> {
  // The same role may end its own sessions.
  const role = new Client({ connectionString: service.database.appUrl });
  await role.connect();
  await role.query(
    `select pg_terminate_backend(pid) from pg_stat_activity
     where datname = current_database() and application_name = $1`,
    [LISTENER_NAME],
  );
  await role.end();
}

const changeBike = (of: TestTeam, bikeId = of.bike.id) =>
  of.mechanic.post(`${of.path}/setups`, { ...SETUP, bikeId }).expect(201);
const logRun = (of: TestTeam) =>
  of.riderMember
    .post(`${of.path}/runs`, { bikeId: of.bike.id, trackId: of.track.id, day: '2026-05-09' })
    .expect(201);

describe('a stream of a team', () => {
  it('is one that no proxy should keep back', async () => {
    const stream = await listen(team.mechanic);
    expect(stream.headers['content-type']).toContain('text/event-stream');
    expect(stream.headers['cache-control']).toContain('no-store');
    expect(stream.headers['x-accel-buffering']).toBe('no');
  });

  it('tells what was changed on another process, and nothing of its contents', async () => {
    const stream = await listen(team.mechanic, second);
    await changeBike(team);
    const whose = { bikeId: team.bike.id, riderId: team.rider.id };
    expect(await stream.next('change', 'setup')).toEqual({ kind: 'setup', ...whose });
    expect(await stream.next('change', 'decision')).toEqual({ kind: 'decision', ...whose });
    await logRun(team);
    expect(await stream.next('change', 'run')).toEqual({ kind: 'run', ...whose });
  });

  it('tells nothing of what was refused', async () => {
    const stream = await listen(team.mechanic);
    const tooMuch = { ...SETUP, fork: { ...SETUP.fork, pressurePsi: 400 }, bikeId: team.bike.id };
    await team.mechanic.post(`${team.path}/setups`, tooMuch).expect(422);
    await team.mechanic
      .post(`${team.path}/tracks`, { name: 'Track that is stored', altitudeM: 10 })
      .expect(201);
    await stream.next('change', 'track');
    expect(stream.seen.filter(({ data }) => data['kind'] === 'setup')).toEqual([]);
  });

  it("tells nothing of another team's changes", async () => {
    const stream = await listen(team.mechanic);
    await changeBike(other);
    await logRun(other);
    await changeBike(team);
    await stream.next('change', 'decision');
    const bikes = stream.seen.flatMap(({ data }) => (data['bikeId'] === undefined ? [] : [data['bikeId']]));
    expect(new Set(bikes)).toEqual(new Set([team.bike.id]));
  });

  it("tells a rider what is their own, and of the team's only that it has changed", async () => {
    const create = async (things: string, body: object) =>
      (await team.mechanic.post(`${team.path}/${things}`, body).expect(201)).body as Stored;
    const rider = await create('riders', { name: 'Rider B', readyMassKg: 70 });
    const { body: own } = await team.mechanic.get(`${team.path}/bikes/${team.bike.id}`).expect(200);
    const bike = without(own as Stored, ['id', 'version']);
    const theirs = await create('bikes', { ...bike, name: 'Bike B', riderId: rider.id });
    const stream = await listen(team.riderMember);
    await changeBike(team, theirs.id);
    await create('tracks', { name: 'A track of the team', altitudeM: 10 });
    await changeBike(team);
    expect(await stream.next('change', 'setup')).toMatchObject({ bikeId: team.bike.id });
    expect(await stream.next('change', 'track')).toEqual({ kind: 'track', bikeId: null, riderId: null });
    expect(JSON.stringify(stream.seen)).not.toContain(theirs.id);
    expect(JSON.stringify(stream.seen)).not.toContain(rider.id);
  });

  it('ends when the sign-in does', async () => {
    const coach = await join(service, team, { role: 'coach' });
    const stream = await listen(coach, second);
    await coach.delete('/sign-ins/current').expect(204);
    await stream.ended;
  });

  it('ends when the membership does', async () => {
    const coach = await join(service, team, { role: 'coach' });
    const stream = await listen(coach, second);
    const { body: account } = await coach.get('/accounts/current').expect(200);
    const { body: members } = await team.mechanic.get(`${team.path}/members`).expect(200);
    const { id } = account as Stored;
    const member = (members as Stored[]).find(({ accountId }) => accountId === id);
    await team.mechanic.delete(`${team.path}/members/${member?.id}`).expect(204);
    await stream.ended;
    await coach.get(`${team.path}/events`).expect(404);
  });

  it('ends where the right to it has ended since it was asked for, before there was a stream to end', async () => {
    // Somebody listens already: it is not the first listening that asks for everybody's rights.
    await listen(team.mechanic);
    const coach = await join(service, team, { role: 'coach' });
    const { body: account } = await coach.get('/accounts/current').expect(200);
    const token = coach.cookieHeader.replace(/^[^=]*=/, '');
    // Its own stream has ended: the end has been heard of.
    const before = await listen(coach);
    await coach.delete('/sign-ins/current').expect(204);
    await before.ended;
    const reader = {
      teamId: team.id,
      accountId: (account as Stored).id,
      role: 'coach',
      riderId: null,
    } as const;
    const { body } = service.app.get(TeamStreams).open(reader, token);
    body.resume();
    await once(body, 'end', { signal: AbortSignal.timeout(5_000) });
  });

  it('says that the database was away, and when it is heard again', async () => {
    const stream = await listen(team.mechanic);
    await endListeners();
    await stream.next('away');
    await stream.next('ready');
    await changeBike(team);
    await stream.next('change', 'setup');
  });

  it('is refused beyond what one person can need', async () => {
    const coach = await join(service, team, { role: 'coach' });
    for (let count = 0; count < 20; count += 1) await listen(coach, second);
    const refused = await fetch(`${second.url}${team.path}/events`, {
      headers: { cookie: coach.cookieHeader },
    });
    expect(refused.status).toBe(429);
    expect(refused.headers.get('retry-after')).toBe('5');
  });
});

it('lets the service stop: it ends the streams itself', async () => {
  const app = await createApp(
    readConfig({ DATABASE_URL: service.database.ownerUrl, LOG_LEVEL: 'error', DATABASE_POOL_SIZE: '2' }),
  );
  await app.listen(0, '127.0.0.1');
  const stream = await listen(team.mechanic, { url: `${await app.getUrl()}/api/v1` });
  await app.close();
  await stream.ended;
});
