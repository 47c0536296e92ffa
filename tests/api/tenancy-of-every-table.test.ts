import { Client } from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { asOwner } from './support/owner.js';
import { startService, type TestService } from './support/service.js';
import { foundTeam, script, SETUP, type TestTeam } from './support/team.js';
import { enterWorkshop } from './support/workshop.js';

/** Tables without a team: an account's own, the list of migrations, and what only functions reach. */
const WITHOUT_TEAM = ['account', 'migrations', 'sign_in', 'sign_in_try', 'team'];
const DENIED = '42501';
const NOBODY = '01990b5e-7c3a-7b1e-9f52-3a6f0d2c4e12';

let service: TestService;
let team: TestTeam;
let other: TestTeam;
/** The application's role, as a hole in the service would use it. */
let app: Client;
let tables: string[];
let own: { teamId: string; accountId: string };

beforeAll(async () => {
  service = await startService();
  [team, other] = [await foundTeam(service), await foundTeam(service, 'Team 2')];
  for (const one of [team, other]) {
    await script(service, one, ['read']);
    await one.mechanic.post(`${one.path}/setups`, { ...SETUP, bikeId: one.bike.id }).expect(201);
    const run = { bikeId: one.bike.id, trackId: one.track.id, day: '2026-05-09', fork: { travelLeftMm: 18 } };
    await enterWorkshop(one);
    await one.mechanic.post(`${one.path}/runs`, run).set('idempotency-key', 'run').expect(201);
    const former = `insert into former_member (team_id, id, display_name) values ($1, $1, 'Former coach')`;
    await asOwner(service, former, one.id);
  }
  app = new Client({ connectionString: service.database.appUrl });
  await app.connect();
  const found = await asOwner<{ name: string }>(
    service,
    `select relname as name from pg_class where relkind in ('r', 'p', 'v', 'm') and relnamespace = 'public'::regnamespace
     order by 1`,
  );
  tables = found.map(({ name }) => name);
  const [mechanic] = await asOwner<{ id: string }>(
    service,
    `select account_id as id from member where team_id = $1 and role = 'mechanic'`,
    team.id,
  );
  own = { teamId: team.id, accountId: mechanic?.id ?? '' };
});
afterAll(async () => {
  await app.end();
  await service.stop();
});

type Scope = { teamId: string; accountId: string };
const NONE: Scope = { teamId: '', accountId: '' };

/** How many rows a statement touches under the application's role, or its SQLSTATE; nothing stays. */
async function asApp(scope: Scope, statement: string, ...values: unknown[]): Promise<number | string> {
  await app.query('begin');
  try {
    await app.query(`select set_config('app.team_id', $1, true), set_config('app.account_id', $2, true)`, [
      scope.teamId,
      scope.accountId,
    ]);
    return (await app.query(statement, values)).rowCount ?? 0;
  } catch (error) {
    return (error as { code: string }).code;
  } finally {
    await app.query('rollback');
  }
}

const columnsOf = (table: string) =>
  asOwner<{ name: string }>(
    service,
    `select attname as name from pg_attribute where attrelid = $1::regclass and attnum > 0 and not attisdropped`,
    table,
  );
const nothing = (result: number | string) => result === 0 || result === DENIED;

describe('every table of the catalogue', () => {
  it('belongs to a team by its first column, or is one of the few that belong to none', async () => {
    const ofTeam = await asOwner<{ name: string }>(
      service,
      `select table_name as name from information_schema.columns
       where table_schema = 'public' and column_name = 'team_id' and ordinal_position = 1`,
    );
    const names = ofTeam.map(({ name }) => name);
    expect(tables.filter((table) => !names.includes(table))).toEqual(WITHOUT_TEAM);
  });

  it('gives nothing to who has named no team, or one that does not exist', async () => {
    for (const table of tables) {
      for (const scope of [NONE, { teamId: NOBODY, accountId: NOBODY }]) {
        const results = [
          await asApp(scope, `select 1 from ${table}`),
          await asApp(scope, `delete from ${table}`),
          await asApp(scope, `truncate ${table} cascade`),
        ];
        for (const { name } of await columnsOf(table)) {
          results.push(await asApp(scope, `update ${table} set "${name}" = "${name}"`));
        }
        expect([table, results.filter((result) => !nothing(result))]).toEqual([table, []]);
      }
    }
  }, 60_000);

  it("neither shows, changes nor deletes another team's rows, by whatever column they are asked for", async () => {
    for (const table of tables.filter((name) => !WITHOUT_TEAM.includes(name))) {
      const others = `team_id = '${other.id}'`;
      const results = [
        await asApp(own, `select 1 from ${table} where ${others}`),
        await asApp(own, `select 1 from ${table} where team_id <> '${team.id}'`),
        await asApp(own, `delete from ${table} where ${others}`),
        await asApp(own, `update ${table} set team_id = '${other.id}'`),
      ];
      for (const { name } of await columnsOf(table)) {
        results.push(await asApp(own, `update ${table} set "${name}" = "${name}" where ${others}`));
      }
      expect([table, results.filter((result) => !nothing(result))]).toEqual([table, []]);
    }
  }, 60_000);

  it("takes no row into another team, not even a copy of that team's own", async () => {
    for (const table of tables.filter((name) => name !== 'migrations')) {
      const column = { team: 'id', account: 'id', sign_in: 'account_id' }[table];
      const others = column
        ? `${column} <> all (array[$1, $2]::uuid[])`
        : `to_jsonb(t) ->> 'team_id' <> all (array[$1, $2])`;
      const [row] = await asOwner(
        service,
        `select to_jsonb(t) as row from ${table} t where ${others} limit 1`,
        team.id,
        own.accountId,
      );
      // A table that holds nothing yet is filled with nothing: the policy comes before any other check.
      const given = {
        team_id: other.id,
        account_id: NOBODY,
        id: NOBODY,
        ...(row?.['row'] as object | undefined),
      };
      const insert = `insert into ${table} select * from jsonb_populate_record(null::${table}, $1)`;
      expect([table, await asApp(own, insert, JSON.stringify(given))]).toEqual([table, DENIED]);
    }
  });

  it('keeps what belongs to another account: its e-mail address, its sign-ins, its teams', async () => {
    const [stranger] = await asOwner<{ id: string }>(
      service,
      `select account_id as id from member where team_id = $1 and role = 'mechanic'`,
      other.id,
    );
    for (const question of [
      `select 1 from account where id = '${stranger?.id}'`,
      `select 1 from sign_in where account_id = '${stranger?.id}'`,
      `select 1 from member where account_id = '${stranger?.id}'`,
      `select 1 from team where id = '${other.id}'`,
      `delete from sign_in where account_id <> '${own.accountId}'`,
      `select 1 from sign_in_try`,
    ]) {
      expect([question, nothing(await asApp(own, question))]).toEqual([question, true]);
    }
  });
});

/** What each function opens that the service could not reach itself. A new one is named here, and tried where it is used. */
const DOORS = {
  end_sign_in: 'the sign-in of who holds its token',
  forgive_tries: 'the count under one key',
  hold_password: 'yes or no, to whom the account is',
  only_in_team: 'yes or no',
  only_rides_in: 'yes or no',
  open_invitation: 'the invitation of who holds its token',
  own_tokens: 'numbers of the tokens of the account that the transaction acts for',
  password_link_is_open: 'yes or no, to who holds its token',
  purge_stale: 'only what is past its time',
  record_change: 'a trigger: it writes the audit trail',
  request_scope: 'the account and place of who holds a sign-in token',
  revoke_own_tokens: 'the tokens of the account that the transaction acts for',
  see_sign_in: 'a time, to who holds its token',
  see_token: 'a time, to who holds it',
  set_own_password: 'the account that the transaction acts for',
  sign_in_candidate: 'one password hash, by the address',
  still_mechanic: 'yes or no',
  take_try: 'the count under one key',
  token_scope: 'the place of who holds an API token',
  use_password_link: 'the account of the link of who holds its token',
  use_sign_in_link: 'the account of the link of who holds its token',
};

describe('every function that runs with the rights of the owner', () => {
  it('is one of the known doors, is for the service alone, and looks names up in our schema only', async () => {
    const doors = await asOwner<{ name: string; acl: string; settings: string[] }>(
      service,
      `select proname as name, coalesce(proacl::text, 'public') as acl, proconfig as settings
       from pg_proc where prosecdef and pronamespace = 'public'::regnamespace order by 1`,
    );
    for (const { name, acl, settings } of doors) {
      // An entry that begins with '=' is everybody's.
      expect([name, /(^|[{,])=/.test(acl) || acl === 'public']).toEqual([name, false]);
      expect([name, settings.join()]).toEqual([
        name,
        expect.stringMatching(/^search_path=public(, pg_temp)?$/),
      ]);
    }
    expect(doors.map(({ name }) => name).toSorted()).toEqual(Object.keys(DOORS).toSorted());
  });
});
