import type { MigrationInterface, QueryRunner } from 'typeorm';
import { APP_ROLE } from '../../../config/config.js';
import { recordChangesOf } from './audited.js';
import { createDoor } from './create-door.js';

const TEAM = `nullif(current_setting('app.team_id', true), '')::uuid`;
/** When a token was last used is written down no more often than that: a request must not cost a write. */
const SEEN_EVERY = `interval '10 minutes'`;

/** Tokens for scripts, the audit trail, and the removal of what nobody needs any more. */
export class TokensAndAudit1764600001000 implements MigrationInterface {
  name = 'TokensAndAudit1764600001000';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of [...TOKENS, ...AUDIT]) await runner.query(statement);
    for (const door of DOORS) await createDoor(runner, door);
    for (const [table, events, ignored] of AUDITED) await recordChangesOf(runner, table, events, ignored);
    // A link's token was kept in the answer to its request; the answer is not needed.
    await runner.query(`delete from idempotency where answer ->> 'path' like '/join#%'`);
  }

  /** Migrations go forward only: a step back is a restore from the backup. */
  async down(): Promise<void> {
    throw new Error('Migrations go forward only.');
  }
}

const ownTeam = (table: string, rights: string): string[] => [
  `alter table ${table} add constraint ${table}_team_id_fk
   foreign key (team_id) references team (id) on delete cascade`,
  `alter table ${table} enable row level security`,
  `create policy own_team on ${table} to ${APP_ROLE} using (team_id = ${TEAM}) with check (team_id = ${TEAM})`,
  `grant ${rights} on ${table} to ${APP_ROLE}`,
];

const TOKENS = [
  `create table api_token (
    team_id uuid not null,
    id uuid not null,
    created_at timestamptz not null default now(),
    account_id uuid not null,
    name text not null,
    token_hash text not null,
    scopes text[] not null,
    last_used_at timestamptz,
    revoked_at timestamptz,
    constraint api_token_pk primary key (team_id, id)
  )`,
  `create unique index api_token_hash on api_token (team_id, token_hash)`,
  `create index api_token_of_hash on api_token (token_hash)`,
  `alter table api_token add constraint api_token_account_id_fk
   foreign key (account_id) references account (id)`,
  ...ownTeam('api_token', 'select, insert, update (revoked_at)'),
];

const AUDIT = [
  `create table audit_entry (
    team_id uuid not null,
    id uuid not null,
    created_at timestamptz not null default now(),
    account_id uuid,
    account_name text,
    client text not null,
    token_id uuid,
    request_id text,
    action text not null,
    kind text not null,
    record_id uuid not null,
    fields text[] not null,
    constraint audit_entry_pk primary key (team_id, id)
  )`,
  `create index audit_entry_kind on audit_entry (team_id, kind, id)`,
  `create index audit_entry_account on audit_entry (team_id, account_id, id)`,
  // Only the owner's function below writes it; the service can read it and no more.
  ...ownTeam('audit_entry', 'select'),
  // A UUID of version 7: milliseconds, then their fraction in 4096 parts, so that entries sort as they were made.
  `create function new_entry_id() returns uuid language sql volatile set search_path = public, pg_temp as $$
    select (lpad(to_hex(floor(ms)::bigint), 12, '0') || '7' || lpad(to_hex(floor((ms - floor(ms)) * 4096)::int), 3, '0')
            || right(replace(gen_random_uuid()::text, '-', ''), 16))::uuid
    from (select extract(epoch from clock_timestamp()) * 1000 as ms) as now
  $$`,
  // Names of fields, never what is in them: a rider's body mass is nobody's reading in a log.
  `create function record_change() returns trigger language plpgsql security definer
   set search_path = public, pg_temp as $$
   declare
     subject jsonb := to_jsonb(coalesce(new, old));
     of_team uuid := coalesce(subject ->> 'team_id', subject ->> 'id')::uuid;
     actor uuid := nullif(current_setting('app.account_id', true), '')::uuid;
     in_request text := nullif(current_setting('app.request_id', true), '');
     by_token uuid := nullif(current_setting('app.token_id', true), '')::uuid;
     changed text[] := '{}';
   begin
     if tg_op = 'UPDATE' then
       select array_agg(key order by key) into changed from jsonb_each(to_jsonb(new))
       where value is distinct from to_jsonb(old) -> key and key <> 'version' and not key = any (coalesce(tg_argv, '{}'));
       if changed is null then return null; end if;
     end if;
     -- The team itself is being deleted, and this trail with it.
     if tg_op = 'DELETE' and not exists (select from team where id = of_team) then return null; end if;
     insert into audit_entry
       (team_id, id, account_id, account_name, client, token_id, request_id, action, kind, record_id, fields)
     values (
       of_team, new_entry_id(), actor, (select display_name from account where id = actor),
       case when by_token is not null then 'token' when in_request is not null then 'sign-in' else 'service' end,
       by_token, in_request,
       case tg_op when 'INSERT' then 'added' when 'UPDATE' then 'changed' else 'removed' end,
       replace(tg_table_name, '_', '-'), (subject ->> 'id')::uuid, changed
     );
     return null;
   end
   $$`,
  `revoke all on function record_change() from public`,
];

/** Table, the events that are a person's doing, and the fields that change by themselves. */
const AUDITED: readonly (readonly [string, string, readonly string[]])[] = [
  ['api_token', 'insert or update or delete', ['last_used_at']],
  ['bike', 'insert or update or delete', []],
  ['decision', 'insert or update or delete', []],
  ['invitation', 'insert or update or delete', []],
  ['member', 'insert or update or delete', []],
  // The rows of an order are made with its plan; a run attached to one is somebody's doing.
  ['planned_run', 'update of run_id', ['dropped_at']],
  ['rider', 'insert or update or delete', []],
  ['run', 'insert or update or delete', ['readings_count']],
  ['session', 'insert or update or delete', []],
  ['setup', 'insert or update or delete', []],
  ['spring_unit', 'insert or update or delete', []],
  ['team', 'insert or update or delete', ['evidence_version']],
  ['test_plan', 'insert or update or delete', []],
  ['track', 'insert or update or delete', []],
];

const DOORS = [
  {
    name: 'token_scope',
    parameters: 'wanted_token_hash text, wanted_team_id uuid',
    definition: `returns table (account_id uuid, role text, rider_id uuid, is_stale boolean, token_id uuid, scopes text[])
      language sql stable security definer set search_path = public, pg_temp as
      $$ select member.account_id, case when member.team_id = wanted_team_id then member.role end, member.rider_id,
                coalesce(api_token.last_used_at < now() - ${SEEN_EVERY}, true), api_token.id, api_token.scopes
         from api_token
         join member on member.team_id = api_token.team_id and member.account_id = api_token.account_id
         where api_token.token_hash = wanted_token_hash and api_token.revoked_at is null $$`,
  },
  {
    name: 'see_token',
    parameters: 'wanted_token_hash text',
    definition: `returns void language sql volatile security definer set search_path = public, pg_temp as
      $$ update api_token set last_used_at = now() where token_hash = wanted_token_hash $$`,
  },
  {
    // One process at a time; another that comes meanwhile has nothing to do.
    name: 'purge_stale',
    parameters: 'answers_older_than interval, tries_older_than interval',
    definition: `returns void language plpgsql volatile security definer set search_path = public, pg_temp as
      $$
      begin
        if not pg_try_advisory_xact_lock(hashtext('purge_stale')) then return; end if;
        delete from idempotency using team
          where idempotency.team_id = team.id and idempotency.created_at < now() - answers_older_than;
        delete from sign_in where expires_at < now();
        delete from sign_in_try where last_at < now() - tries_older_than;
      end
      $$`,
  },
] as const;
