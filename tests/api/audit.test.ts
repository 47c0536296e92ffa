import { Client } from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { AUDIT_KINDS } from '../../apps/api/src/modules/audit/audit-entry.entity.js';
import { asOwner } from './support/owner.js';
import { startService, type TestService } from './support/service.js';
import { foundTeam, invite, script, SETUP, type Stored, type TestTeam } from './support/team.js';

/** What is computed from other records or kept for the service itself: no person's change. */
const NOT_A_PERSONS_CHANGE = [
  'audit_entry',
  'baseline',
  'baseline_runs',
  'demand_fit',
  'idempotency',
  // Stored with their run, and only what is computed of them changes.
  'ring_reading',
  // Made with their plan and never changed.
  'test_plan_arm',
];

interface Entry extends Stored {
  readonly kind: string;
  readonly action: string;
  readonly recordId: string;
  readonly fields: string[];
}

let service: TestService;
let team: TestTeam;
beforeAll(async () => {
  service = await startService();
  team = await foundTeam(service);
});
afterAll(() => service.stop());

async function page(query = '', of = team): Promise<{ items: Entry[]; nextCursor: string | null }> {
  return (await of.mechanic.get(`${of.path}/audit?${query}`).expect(200)).body as never;
}

describe('the audit trail', () => {
  it('tells who added, changed and removed what, when, by what, in which request', async () => {
    const { body } = await team.mechanic
      .post(`${team.path}/tracks`, { name: 'Scree', altitudeM: 900 })
      .expect(201);
    const track = body as Stored;
    await team.coach.put(`${team.path}/tracks/${track.id}`, { name: 'Scree', altitudeM: 950 }, 1).expect(200);
    const coaches = (await team.mechanic.get(`${team.path}/members`).expect(200)).body as Stored[];
    const place = coaches.find((member) => member['role'] === 'coach');
    const [changed, added] = (await page()).items;
    expect(added).toMatchObject({
      kind: 'track',
      action: 'added',
      recordId: track.id,
      recordName: 'Scree',
      client: 'sign-in',
      accountName: 'Person',
      tokenName: null,
      fields: [],
    });
    expect(changed).toMatchObject({
      action: 'changed',
      fields: ['altitude'],
      accountId: place?.['accountId'],
    });
    expect(changed?.['requestId']).toMatch(/^[\da-f-]{36}$/);
    expect(changed?.['requestId']).not.toBe(added?.['requestId']);
    expect(Date.now() - Date.parse(added?.['at'] as string)).toBeLessThan(60_000);
  });

  it('tells a script from the person it acts for', async () => {
    await team.mechanic.post(`${team.path}/setups`, { ...SETUP, bikeId: team.bike.id }).expect(201);
    const logger = await script(service, team, ['log-runs']);
    const run = {
      bikeId: team.bike.id,
      trackId: team.track.id,
      day: '2026-05-09',
      fork: { travelLeftMm: 18 },
    };
    const { body } = await logger.post(`${team.path}/runs`, run).expect(201);
    const { items } = await page('kind=run');
    expect(items[0]).toMatchObject({ recordId: (body as Stored).id, client: 'token', tokenName: 'Script' });
  });

  it('writes nothing of a change that was refused or undone', async () => {
    const before = (await page()).items[0]?.id;
    await team.coach.post(`${team.path}/riders`, { name: 'R', readyMassKg: 70 }).expect(403);
    await team.mechanic.post(`${team.path}/tracks`, { name: '', altitudeM: 1 }).expect(422);
    await team.mechanic
      .put(`${team.path}/tracks/${team.track.id}`, { name: 'X', altitudeM: 1 }, 9)
      .expect(412);
    expect((await page()).items[0]?.id).toBe(before);
  });

  it('holds neither secrets nor what a body weighs', async () => {
    const { rider } = team;
    await team.mechanic
      .put(`${team.path}/riders/${rider.id}`, { name: 'Rider A', readyMassKg: 83.217 }, 1)
      .expect(200);
    const token = await invite(team, { role: 'coach' });
    const [entry] = (await page('kind=rider')).items;
    expect(entry?.fields).toEqual(['ready_mass']);
    const trail = JSON.stringify(await asOwner(service, 'select * from audit_entry'));
    for (const secret of ['83.217', token, 'argon2']) expect(trail).not.toContain(secret);
  });

  it('is read in pages that leave nothing out, newest first, by kind and by person', async () => {
    const all = (await page('limit=500')).items;
    const read: Entry[] = [];
    for (let cursor: string | null = ''; cursor !== null;) {
      const next = await page(`limit=3${cursor ? `&cursor=${cursor}` : ''}`);
      read.push(...next.items);
      cursor = next.nextCursor;
    }
    expect(read).toEqual(all);
    expect(all.map(({ id }) => id)).toEqual(
      all
        .map(({ id }) => id)
        .toSorted()
        .toReversed(),
    );
    const bikes = (await page('kind=bike')).items;
    expect(bikes.map(({ recordId }) => recordId)).toEqual([team.bike.id]);
    const person = all.find(({ kind, action }) => kind === 'track' && action === 'changed')?.[
      'accountId'
    ] as string;
    const theirs = (await page(`accountId=${person}&limit=500`)).items;
    expect(theirs).toEqual(all.filter((entry) => entry['accountId'] === person));
    await team.mechanic.get(`${team.path}/audit?kind=account`).expect(422);
  });

  it("is the team's own", async () => {
    const other = await foundTeam(service, 'Team 2');
    const ids = new Set((await page('limit=500')).items.map(({ id }) => id));
    for (const { id } of (await page('limit=500', other)).items) expect(ids.has(id)).toBe(false);
    const [mechanic] = (await other.mechanic.get(`${other.path}/members`).expect(200)).body as Stored[];
    expect((await page(`accountId=${String(mechanic?.['accountId'])}`)).items).toEqual([]);
  });

  it('cannot be changed, emptied or added to by the service, not even for its own team', async () => {
    const app = new Client({ connectionString: service.database.appUrl });
    await app.connect();
    try {
      await app.query(`select set_config('app.team_id', $1, false)`, [team.id]);
      expect((await app.query('select 1 from audit_entry')).rowCount).toBeGreaterThan(0);
      for (const statement of [
        `update audit_entry set account_name = 'x'`,
        'delete from audit_entry',
        'truncate audit_entry',
        'insert into audit_entry select * from audit_entry',
        'alter table track disable trigger track_audit',
        'drop trigger track_audit on track',
        'select record_change()',
        `set session_replication_role = 'replica'`,
      ]) {
        await expect(app.query(statement), statement).rejects.toMatchObject({ code: '42501' });
      }
    } finally {
      await app.end();
    }
  });

  it('names every kind of record that it watches, and no other', async () => {
    const watched = await asOwner<{ kind: string }>(
      service,
      `select replace(tgrelid::regclass::text, '_', '-') as kind from pg_trigger
       where tgfoid = 'record_change'::regproc`,
    );
    expect(watched.map(({ kind }) => kind).toSorted()).toEqual([...AUDIT_KINDS].toSorted());
  });

  it('watches every table of a team but those that hold no change of a person', async () => {
    const tables = await asOwner<{ name: string; watched: boolean }>(
      service,
      `select class.relname as name, exists (
         select from pg_trigger where tgrelid = class.oid and tgfoid = 'record_change'::regproc and tgenabled = 'O'
       ) as watched
       from pg_class class
       where class.relkind = 'r' and class.relnamespace = 'public'::regnamespace
         and (class.relname = 'team' or exists (
           select from pg_attribute where attrelid = class.oid and attname = 'team_id'))`,
    );
    const unwatched = tables.filter(({ watched }) => !watched).map(({ name }) => name);
    expect(unwatched.toSorted()).toEqual(
      NOT_A_PERSONS_CHANGE.filter((name) => tables.some((t) => t.name === name)),
    );
  });
});
