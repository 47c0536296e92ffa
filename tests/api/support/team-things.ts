import { asOwner } from './owner.js';
import type { TestService } from './service.js';
import { invite, script, type Stored, type TestTeam } from './team.js';
import { planBody, twoSetups } from './test-plan.js';
import { enterWorkshop } from './workshop.js';
import type { Ids } from './id-places.js';

/** Enters one of each kind of thing for the rider and the bike of `one`, and tells their ids. */
export async function enterThings(service: TestService, one: TestTeam): Promise<Ids> {
  const { mechanic, path, bike, track, rider, fork, shock } = one;
  const setups = await twoSetups(one);
  const run = { bikeId: bike.id, trackId: track.id, day: '2026-05-09', fork: { travelLeftMm: 18 } };
  const stored = (await mechanic.post(`${path}/runs`, run).expect(201)).body as Stored;
  const plan = (await mechanic.post(`${path}/test-plans`, planBody(one, setups)).expect(201)).body as Stored;
  await script(service, one, ['read']);
  await invite(one, { role: 'coach' });
  const workshop = await enterWorkshop(one);
  const first = async (things: string): Promise<Stored> => {
    const { body } = await mechanic.get(`${path}/${things}`).expect(200);
    const [newest] = (Array.isArray(body) ? body : (body as { items: unknown[] }).items) as Stored[];
    if (!newest) throw new Error(`There is none of ${things}.`);
    return newest;
  };
  const member = await first('members');
  const baseline = await first(`baselines?trackId=${track.id}&bikeId=${bike.id}`);
  const decision = await first(`decisions?bikeId=${bike.id}`);
  const token = await first('tokens');
  const sessionId = stored['sessionId'] as string;
  return new Map([
    ...workshop,
    ...named(bike.id, 'bikeId', 'bikes'),
    ...named(track.id, 'trackId', 'tracks'),
    ...named(rider.id, 'riderId', 'riders', 'riderIds'),
    ...named(fork.id, 'forkUnitId'),
    ...named(shock.id, 'shockUnitId'),
    ...named(setups.before.id, 'setupId', 'currentSetupId', 'setups'),
    ...named(sessionId, 'sessionId', 'sessions'),
    ...named(stored.id, 'runId', 'runs'),
    ...named(plan.id, 'planId', 'testPlanId', 'test-plans'),
    ...named(member['accountId'] as string, 'accountId'),
    ...named(member.id, 'members'),
    ...named(decision.id, 'decisions'),
    ...named(token.id, 'tokens'),
    ...named(baseline.id, 'baselineId', 'baselines'),
  ]);
}

const named = (id: string, ...names: string[]): [string, string][] => names.map((name) => [name, id]);

/** Count and digest of the rows of every table that has one of these columns, where it has the value. */
export async function digestOf(
  service: TestService,
  values: Readonly<Record<string, string>>,
): Promise<Record<string, string>> {
  const columns = Object.entries(values);
  const tables = await asOwner<{ table: string; columns: string[] }>(
    service,
    `select table_name as table, array_agg(column_name::text) as columns from information_schema.columns
      join information_schema.tables using (table_schema, table_name)
      where table_schema = 'public' and table_type = 'BASE TABLE' and column_name = any($1) group by 1`,
    columns.map(([column]) => column),
  );
  const found: Record<string, string> = {};
  for (const { table, columns: has } of tables) {
    const conditions = has.map((column) => `"${column}" = '${values[column]}'`);
    const [row] = await asOwner<{ found: string }>(
      service,
      `select count(*) || ' ' || coalesce(md5(string_agg(one::text, chr(10) order by one::text)), '') as found
        from "${table}" as one where ${conditions.join(' or ')}`,
    );
    if (row && !row.found.startsWith('0 ')) found[table] = row.found;
  }
  return found;
}
