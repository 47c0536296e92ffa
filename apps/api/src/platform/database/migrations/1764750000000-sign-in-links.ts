import type { MigrationInterface, QueryRunner } from 'typeorm';
import { APP_ROLE } from '../../../config/config.js';
import { recordChangesOf } from './audited.js';
import { createDoor } from './create-door.js';

const TEAM = `nullif(current_setting('app.team_id', true), '')::uuid`;

/** Single-use links by which a rider signs in on another phone. */
export class SignInLinks1764750000000 implements MigrationInterface {
  name = 'SignInLinks1764750000000';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of STATEMENTS) await runner.query(statement);
    for (const door of DOORS) await createDoor(runner, door);
    await recordChangesOf(runner, 'sign_in_link', 'insert or update or delete', []);
  }

  /** Migrations go forward only: a step back is a restore from the backup. */
  async down(): Promise<void> {
    throw new Error('Migrations go forward only.');
  }
}

const STATEMENTS = [
  `create table sign_in_link (
    team_id uuid not null,
    id uuid not null,
    created_at timestamptz not null default now(),
    token_hash text not null,
    account_id uuid not null,
    ends_others boolean not null,
    expires_at timestamptz not null,
    used_at timestamptz,
    constraint sign_in_link_pk primary key (team_id, id)
  )`,
  `create unique index sign_in_link_token on sign_in_link (team_id, token_hash)`,
  `alter table sign_in_link add constraint sign_in_link_team_id_fk
   foreign key (team_id) references team (id) on delete cascade`,
  `alter table sign_in_link add constraint sign_in_link_account_id_fk
   foreign key (account_id) references account (id) on delete cascade`,
  `alter table sign_in_link enable row level security`,
  `create policy own_team on sign_in_link to ${APP_ROLE} using (team_id = ${TEAM}) with check (team_id = ${TEAM})`,
  `grant select, insert on sign_in_link to ${APP_ROLE}`,
];

const DOORS = [
  {
    // A link made in one team must not open another team, nor a role that may do more.
    name: 'only_rides_in',
    parameters: 'wanted_account_id uuid, wanted_team_id uuid',
    definition: `returns boolean language sql stable security definer set search_path = public, pg_temp as
      $$ select exists (select from member where account_id = wanted_account_id and team_id = wanted_team_id)
           and not exists (select from member where account_id = wanted_account_id
                           and (team_id <> wanted_team_id or role <> 'rider')) $$`,
  },
  {
    name: 'use_sign_in_link',
    parameters: 'wanted_token_hash text',
    definition: `returns table (account_id uuid, ends_others boolean)
      language sql volatile security definer set search_path = public, pg_temp as
      $$ update sign_in_link set used_at = now()
         where token_hash = wanted_token_hash and used_at is null and expires_at > now()
           and only_rides_in(sign_in_link.account_id, sign_in_link.team_id)
         returning sign_in_link.account_id, sign_in_link.ends_others $$`,
  },
] as const;
