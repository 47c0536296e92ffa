import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ARCHIVED_TABLES, LEFT_OUT } from '../../apps/api/src/modules/team-archive/archived-tables.js';
import { createDataSource } from '../../apps/api/src/platform/database/data-source.js';
import { alike, archiveOf, changed, rowOf, type Archive } from './support/archive.js';
import { Member } from './support/member.js';
import { asOwner } from './support/owner.js';
import { startService, type TestService } from './support/service.js';
import { foundTeam, script, SETUP, type Stored, type TestTeam } from './support/team.js';
import { planBody, twoSetups } from './support/test-plan.js';

interface Imported {
  id: string;
  name: string;
  records: { table: string; rows: number }[];
  people: { displayName: string; role: string | null }[];
}

const UNKNOWN = '01990b5e-7c3a-7b1e-9f52-3a6f0d2c4e77';

let service: TestService;
let team: TestTeam;
let other: TestTeam;
let archive: Archive;

beforeAll(async () => {
  service = await startService();
  team = await foundTeam(service);
  other = await foundTeam(service, 'Another team with a name to find');
  for (const one of [team, other]) await fill(one);
  archive = await archiveOf(team);
});
afterAll(() => service.stop());

/** Set-ups, runs, a plan with a run, a baseline taken, a decision with its outcome, links and tokens. */
async function fill({ mechanic, riderMember, path, bike, track, ...rest }: TestTeam): Promise<void> {
  const of = { mechanic, riderMember, path, bike, track, ...rest };
  const setups = await twoSetups(of);
  const post = async (to: string, body: object) =>
    (await mechanic.post(`${path}/${to}`, body).expect(201)).body as Stored;
  const plan = await post('test-plans', planBody(of, setups));
  const session = { trackId: of.track.id, day: '2026-05-09', startsAt: '09:30', riderIds: [of.rider.id] };
  await post('planned-sessions', { ...session, testPlanId: plan.id });
  await mechanic
    .post(`${path}/test-plans/${plan.id}/runs`, { timeS: 190, riderId: of.rider.id, day: '2026-05-09' })
    .expect(201);
  for (const travelLeftMm of [22, 30, 18]) {
    const run = {
      bikeId: bike.id,
      trackId: track.id,
      day: '2026-05-09',
      timeS: 187.4,
      fork: { travelLeftMm },
    };
    await riderMember.post(`${path}/runs`, { ...run, shock: { travelLeftMm: 6 } }).expect(201);
  }
  const asked = await mechanic.get(`${path}/baselines?trackId=${track.id}`).expect(200);
  const [baseline] = (asked.body as { items: Stored[] }).items;
  await mechanic.post(`${path}/baselines/${baseline?.id}/take`, { reason: 'As offered.' }).expect(201);
  const decisions = (await mechanic.get(`${path}/decisions`).expect(200)).body as { items: Stored[] };
  await mechanic
    .put(`${path}/decisions/${decisions.items[0]?.id}/outcome`, { outcome: 'kept', note: 'Held up.' }, 1)
    .expect(200);
  const fork = `spring-units/${of.fork.id}`;
  await post(`${fork}/care`, { serviceIntervalHours: 50, capTorqueNm: 28 });
  const day = { day: '2026-05-09', doneBy: 'Workshop' };
  await post(`${fork}/service-entries`, { ...day, kind: 'service', note: 'New seals.' });
  const riding = await post(`${fork}/service-entries`, { ...day, kind: 'hours', ridingHours: 2 });
  await post(`service-entries/${riding.id}/take-back`, { note: 'It was the other fork.' });
  const spare = await post('setups', { ...SETUP, fork: { ...SETUP.fork, spacers: 3 }, bikeId: bike.id });
  const order = (await post('work-orders', { setupId: spare.id })) as Stored & { steps: Stored[] };
  for (const step of order.steps) await post(`work-steps/${step.id}/tick`, { isDone: true });
  await script(service, of, ['read']);
}

async function take(member: Member, given: object, key?: string): Promise<Imported> {
  const { status, body } = await member.postArchive(given, key);
  // What is refused says why in the report of the test.
  expect([status, (body as { errors?: unknown }).errors]).toEqual([201, undefined]);
  return body as Imported;
}

const teams = async () =>
  (await asOwner<{ n: number }>(service, 'select count(*)::int as n from team'))[0]?.n;

describe('the lists of tables', () => {
  it('name every table of the database once: archived, or left out for a reason', async () => {
    const source = createDataSource(service.database.ownerUrl, 1);
    await source.initialize();
    const archived = ARCHIVED_TABLES.map(({ entity }) => source.getMetadata(entity).tableName);
    await source.destroy();
    const found = await asOwner<{ name: string }>(
      service,
      `select relname as name from pg_class where relkind in ('r', 'p') and relnamespace = 'public'::regnamespace
       and relname <> 'migrations' order by 1`,
    );
    expect([...archived, ...Object.keys(LEFT_OUT)].toSorted()).toEqual(found.map(({ name }) => name));
  });

  it('say of every number, choice and JSON of a row what it may be', async () => {
    const source = createDataSource(service.database.ownerUrl, 1);
    await source.initialize();
    const loose = ARCHIVED_TABLES.flatMap(({ entity, columns, derived, row, lists, people }) => {
      const metadata = source.getMetadata(entity);
      const named = new Set([
        ...Object.keys(columns),
        ...Object.keys(derived),
        ...Object.keys(lists),
        ...people,
      ]);
      const references = metadata.foreignKeys.flatMap((key) =>
        key.columns.map((column) => column.propertyName),
      );
      return metadata.columns
        .filter(({ propertyName }) => !named.has(propertyName) && !references.includes(propertyName))
        .filter(({ propertyName }) => !['id', 'createdAt', 'version'].includes(propertyName))
        .filter(
          ({ type }) => type === 'jsonb' || type === 'uuid' || (!row && /float|int|text/.test(String(type))),
        )
        .map(({ propertyName }) => `${metadata.tableName}.${propertyName}`);
    });
    await source.destroy();
    expect(loose).toEqual([]);
  });
});

describe('an archive', () => {
  it('holds every record of the team', async () => {
    for (const [table, rows] of Object.entries(archive.records)) {
      const [stored] = await asOwner<{ n: number }>(
        service,
        `select count(*)::int as n from ${table} where team_id = $1`,
        team.id,
      );
      expect([table, rows.length]).toEqual([table, stored?.n]);
      expect([table, rows.length > 0]).toEqual([table, true]);
    }
  });

  it('names people by name, address and role, and holds no secret and nothing of another team', async () => {
    const text = JSON.stringify(archive);
    expect(archive.people.map(({ role }) => role).toSorted()).toEqual(['coach', 'mechanic', 'rider']);
    expect(archive.people.map(({ email }) => email)).toContain(team.coach.email);
    expect(text).not.toMatch(/hash|password|token|argon2/i);
    expect(text).not.toContain('Another team');
    expect(text).not.toContain(team.id);
    for (const { id } of await asOwner<{ id: string }>(
      service,
      'select id from run where team_id = $1',
      other.id,
    ))
      expect(text).not.toContain(id);
    expect(text).not.toContain(other.mechanic.email);
  });

  it('is for the mechanic only', async () => {
    await team.coach.get(`${team.path}/archive`).expect(403);
    await team.riderMember.get(`${team.path}/archive`).expect(403);
    await other.mechanic.get(`${team.path}/archive`).expect(404);
  });
});

describe('a team made of an archive', () => {
  it('gives the same archive again, but for the ids', async () => {
    const imported = await take(team.mechanic, archive);
    const again = await archiveOf({ mechanic: team.mechanic, path: `/teams/${imported.id}` });
    expect(alike(again)).toEqual(alike(archive));
    const ids = (of: Archive) => Object.values(of.records).flatMap((rows) => rows.map(({ id }) => id));
    expect(ids(again).filter((id) => ids(archive).includes(id))).toEqual([]);
  });

  it("is its maker's alone: the people of the archive are named and not let in", async () => {
    const stranger = await new Member(service).signUp();
    const imported = await take(stranger, archive);
    const path = `/teams/${imported.id}`;
    expect(imported.people.map(({ displayName }) => displayName).toSorted()).toEqual([
      'Person',
      'coach',
      'rider',
    ]);
    const members = (await stranger.get(`${path}/members`).expect(200)).body as { role: string }[];
    expect(members.map(({ role }) => role)).toEqual(['mechanic']);
    await team.coach.get(path).expect(404);
    const { items } = (await stranger.get(`${path}/decisions`).expect(200)).body as { items: Stored[] };
    expect(items[0]?.['decidedByName']).toBe('Person');
    const again = await archiveOf({ mechanic: stranger, path });
    expect(again.people.map(({ email }) => email).toSorted()).toEqual(
      [...archive.people.map(({ email }) => email), stranger.email].toSorted(),
    );
    expect((alike(again) as Archive).records).toEqual((alike(archive) as Archive).records);
  });

  it('finds every hit height by itself, as the readings give it', async () => {
    const imported = await take(team.mechanic, archive);
    const heights = (teamId: string) =>
      asOwner(
        service,
        `select hit_kind, hit_height, hit_lower, hit_upper, log_height, log_sd, basis from ring_reading
         where team_id = $1 order by id`,
        teamId,
      );
    expect(await heights(imported.id)).toEqual(await heights(team.id));
  });

  it('computes its own baseline when it is asked for one, and gives the answer the team had', async () => {
    const imported = await take(team.mechanic, archive);
    const path = `/teams/${imported.id}`;
    const tracks = (await team.mechanic.get(`${path}/tracks`).expect(200)).body as { items: Stored[] };
    const answer = async (of: string, trackId: string | undefined) =>
      (
        (await team.mechanic.get(`${of}/baselines?trackId=${trackId}`).expect(200)).body as {
          items: { id: string; fork: { recommended: object }; runCount: number }[];
        }
      ).items[0];
    const there = await answer(path, tracks.items[0]?.id);
    const here = await answer(team.path, team.track.id);
    expect(there?.fork.recommended).toEqual(here?.fork.recommended);
    expect(there?.runCount).toBe(here?.runCount);
    expect(there?.id).not.toBe(here?.id);
  });

  it('is made once, however often the request is repeated, also at the same time', async () => {
    const before = (await teams()) ?? 0;
    const together = await Promise.all([1, 2, 3].map(() => team.mechanic.postArchive(archive, 'once')));
    // One such file of an account is on its way at a time: the others are told so, and may ask again.
    const told = together
      .filter(({ status }) => status !== 201)
      .map(({ body }) => (body as { code: string }).code);
    expect(new Set([...told, 'files.too-many']).size).toBe(1);
    const made = together.filter(({ status }) => status === 201).map(({ body }) => body as Imported);
    expect(made.length).toBeGreaterThan(0);
    const again = await take(team.mechanic, archive, 'once');
    for (const answer of made) expect(answer).toEqual(again);
    expect(await teams()).toBe(before + 1);
    const renamed = { ...archive, team: { ...archive.team, name: 'Renamed' } };
    const refused = await team.mechanic.postArchive(renamed, 'once').expect(409);
    expect((refused.body as { code: string }).code).toBe('idempotency.key-reused');
    await team.mechanic
      .post('/teams', { name: 'By the key of a team' })
      .set('idempotency-key', 'plain')
      .expect(201);
    await team.mechanic.postArchive(archive, 'plain').expect(409);
  });

  it('reads an archive from before a table was there', async () => {
    const records = Object.fromEntries(
      Object.entries(archive.records).filter(([table]) => table !== 'decision'),
    );
    const imported = await take(team.mechanic, { ...archive, records });
    expect(imported.records.find(({ table }) => table === 'decision')?.rows).toBe(0);
  });
});

describe('a broken archive is refused, nothing of it stored, and what is wrong is told:', () => {
  type Tampering = [what: string, place: RegExp, (draft: Archive) => void];
  const foreignRun = async () =>
    (await asOwner<{ id: string }>(service, 'select id from run where team_id = $1 limit 1', other.id))[0]
      ?.id;

  const TAMPERED: Tampering[] = [
    ['an unknown table', /records\.account/, (draft) => (draft.records['account'] = [])],
    ['rows that are no list', /records\.run$/, (draft) => (draft.records['run'] = {} as never)],
    ['a row that is none', /records\.run\.0/, (draft) => (draft.records['run'] = [null as never])],
    ['an unknown field', /rider\.0\.teamId/, (draft) => (rowOf(draft, 'rider')['teamId'] = team.id)],
    ['a missing field', /bike\.0\.mass/, (draft) => delete rowOf(draft, 'bike')['mass']],
    ['a text for a number', /bike\.0\.mass/, (draft) => (rowOf(draft, 'bike')['mass'] = '15')],
    ['a number out of range', /bike\.0\.massKg/, (draft) => (rowOf(draft, 'bike')['mass'] = 1_500)],
    [
      'null where nothing may be',
      /setup\.0\.forkPressure/,
      (draft) => (rowOf(draft, 'setup')['forkPressure'] = null),
    ],
    ['no such word', /session\.0\.condition/, (draft) => (rowOf(draft, 'session')['condition'] = 'lava')],
    ['no such day', /session\.0\.day/, (draft) => (rowOf(draft, 'session')['day'] = '2026-02-30')],
    ['a date that is none', /run\.0\.createdAt/, (draft) => (rowOf(draft, 'run')['createdAt'] = 'yesterday')],
    ['control characters', /track\.0\.name/, (draft) => (rowOf(draft, 'track')['name'] = 'a\u0000b')],
    ['an id that is none', /track\.0\.id/, (draft) => (rowOf(draft, 'track').id = '1')],
    ['one id twice', /\.id/, (draft) => (rowOf(draft, 'track').id = rowOf(draft, 'rider').id)],
    [
      'one name twice',
      /track\.1\.name/,
      (draft) => draft.records['track']?.push({ ...rowOf(draft, 'track'), id: UNKNOWN }),
    ],
    ['a reference to nothing', /run\.0\.setupId/, (draft) => (rowOf(draft, 'run')['setupId'] = UNKNOWN)],
    [
      'a reference to another kind',
      /run\.0\.setupId/,
      (draft) => (rowOf(draft, 'run')['setupId'] = rowOf(draft, 'bike').id),
    ],
    [
      'a fork for a shock',
      /bike\.0\.shockUnitId/,
      (draft) => (rowOf(draft, 'bike')['shockUnitId'] = rowOf(draft, 'bike')['forkUnitId']),
    ],
    [
      'a reference in a list to nothing',
      /baseline_runs\.0\.runIds/,
      (draft) => (rowOf(draft, 'baseline_runs')['runIds'] = [UNKNOWN]),
    ],
    [
      'a person who is none',
      /decision\.0\.decidedBy/,
      (draft) => (rowOf(draft, 'decision')['decidedBy'] = UNKNOWN),
    ],
    [
      'a rider role without a rider',
      /people\.\d\.riderId/,
      (draft) => draft.people.forEach((person) => (person.riderId = null)),
    ],
    [
      'two people of one address',
      /people/,
      (draft) => draft.people.forEach((person) => (person.email = 'a@team.example')),
    ],
    [
      'a set-up before itself',
      /setup\.\d\.previousId/,
      (draft) =>
        draft.records['setup']?.forEach((row, i, all) => (row['previousId'] = all[(i + 1) % all.length]?.id)),
    ],
    ['set-ups out of order', /setup\.\d\.revision/, (draft) => (rowOf(draft, 'setup')['revision'] = 900)],
    [
      'a made plan that is none',
      /test_plan\.0\.made\.letters/,
      (draft) => ((rowOf(draft, 'test_plan')['made'] as { letters: unknown }).letters = 'AB'),
    ],
    [
      'an unknown id in a plan',
      /test_plan\.0\.made/,
      (draft) =>
        (rowOf(draft, 'test_plan')['made'] as { runs: { rider: string }[] }).runs.forEach(
          (run) => (run.rider = UNKNOWN),
        ),
    ],
    [
      'an answer that is none',
      /baseline\.0\.answer/,
      (draft) => (rowOf(draft, 'baseline')['answer'] = { fork: {} }),
    ],
    [
      'a field more in an answer',
      /baseline\.0\.answer/,
      (draft) => ((rowOf(draft, 'baseline')['answer'] as { fork: Record<string, unknown> }).fork['more'] = 1),
    ],
    [
      'a leverage table that turns back',
      /bike\.0\.leverageTable/,
      (draft) => (rowOf(draft, 'bike')['leverageTable'] as unknown[]).reverse(),
    ],
    [
      'a unit that cannot be built',
      /spring_unit\.0/,
      (draft) =>
        (rowOf(draft, 'spring_unit')['shaftArea'] = (rowOf(draft, 'spring_unit')['boreArea'] as number) * 2),
    ],
    [
      'a counter at its end',
      /archive\.team\.evidenceVersion/,
      (draft) => (draft.team.evidenceVersion = 2_147_483_647),
    ],
    ['no name', /archive\.team\.name/, (draft) => (draft.team.name = 7 as never)],
  ];

  it.each(TAMPERED)('%s', async (_, place, tamper) => {
    const before = await teams();
    const { body } = await team.mechanic.postArchive(changed(archive, tamper)).expect(422);
    const { code, errors } = body as { code: string; errors: { field: string; allowed: string }[] };
    expect(code).toBe('team-archive.refused');
    expect(errors.map(({ field }) => field).filter((field) => place.test(field))).not.toEqual([]);
    for (const { allowed } of errors) expect(allowed).not.toBe('');
    expect(await teams()).toBe(before);
  });

  it.each<[what: string, field: string, given: number, (draft: Archive) => void]>([
    [
      'the temperature of a filling at no altitude, in °C',
      'records.setup.0.filledTemperatureC',
      20,
      (draft) => (rowOf(draft, 'setup')['filledTemperature'] = 293.15),
    ],
    [
      'riding in a service, in hours',
      'records.service_entry.0.ridingHours',
      2,
      (draft) => (rowOf(draft, 'service_entry')['riding'] = 7_200),
    ],
  ])('a figure as people read it: %s', async (_, field, given, tamper) => {
    const { body } = await team.mechanic.postArchive(changed(archive, tamper)).expect(422);
    const { errors } = body as { errors: { field: string; given: unknown }[] };
    expect(errors.map((error) => [error.field, error.given])).toEqual([[field, given]]);
  });

  it("an id of another team's record", async () => {
    const id = await foreignRun();
    const tampered = changed(archive, (draft) => {
      rowOf(draft, 'ring_reading')['runId'] = id;
      rowOf(draft, 'baseline_runs')['runIds'] = [id];
    });
    const { body } = await team.mechanic.postArchive(tampered).expect(422);
    const fields = (body as { errors: { field: string }[] }).errors.map(({ field }) => field);
    expect(fields).toEqual(
      expect.arrayContaining(['records.ring_reading.0.runId', 'records.baseline_runs.0.runIds']),
    );
  });

  it.each([
    ['cut off', () => JSON.stringify(archive).slice(0, -500)],
    ['no JSON', () => 'date,track,bike\n'],
    ['empty', () => ' '],
    ['another document', () => '{"format":"something else"}'],
    ['of a later version', () => JSON.stringify({ ...archive, version: 2 })],
    ['nested without end', () => '['.repeat(50_000) + ']'.repeat(50_000)],
    ['null', () => 'null'],
  ])('one that is %s', async (_, text) => {
    const { body } = await team.mechanic.postArchive(text()).expect(400);
    expect((body as { code: string }).code).toBe('team-archive.unreadable');
  });

  it('one of another type, and one beyond the limit', async () => {
    await team.mechanic.post('/teams/import', archive).expect(400);
    await team.mechanic.postArchive(`"${'x'.repeat(33 * 1024 * 1024)}"`).expect(413);
  });
});
