import type { MigrationInterface, QueryRunner } from 'typeorm';
import { APP_ROLE } from '../../../config/config.js';

/** What the application's role may do with each table of a team. Columns in brackets: only these may change. */
const TEAM_TABLES: Readonly<Record<string, string>> = {
  baseline: 'select, insert',
  bike: 'select, insert, update',
  decision: 'select, insert, update (outcome, outcome_note, outcome_by, outcome_at, version)',
  demand_fit: 'select, insert, update',
  idempotency: 'select, insert, update (answer), delete',
  invitation: 'select, insert, update (used_at)',
  member: 'select, insert, update, delete',
  rider: 'select, insert, update',
  ring_reading:
    'select, insert, update (hit_kind, hit_height, hit_lower, hit_upper, log_height, log_sd, basis, inputs)',
  run: 'select, insert, update (voided_at, void_reason, voided_by, readings_count)',
  session: 'select, insert, update',
  setup: 'select, insert',
  spring_unit: 'select, insert, update',
  track: 'select, insert, update',
};

const TEAM = `nullif(current_setting('app.team_id', true), '')::uuid`;
const ACCOUNT = `nullif(current_setting('app.account_id', true), '')::uuid`;

/**
 * Row-level security: under the application's role a statement sees the rows of the team that its transaction
 * has named, and none if it has named none. History cannot be rewritten: set-ups, runs, decisions and baselines
 * have no right to be changed but in the columns listed above.
 */
export class Tenancy1764000001000 implements MigrationInterface {
  name = 'Tenancy1764000001000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`grant usage on schema public to ${APP_ROLE}`);
    for (const [table, rights] of Object.entries(TEAM_TABLES)) {
      await runner.query(`alter table ${table} enable row level security`);
      await runner.query(
        `create policy own_team on ${table} to ${APP_ROLE} using (team_id = ${TEAM}) with check (team_id = ${TEAM})`,
      );
      await grant(runner, table, rights);
    }
    // A person sees their own memberships in every team, so that they can choose one.
    await runner.query(
      `create policy own_membership on member for select to ${APP_ROLE} using (account_id = ${ACCOUNT})`,
    );
    await this.secureTeam(runner);
    await this.secureAccounts(runner);
    await this.createDoors(runner);
  }

  private async secureTeam(runner: QueryRunner): Promise<void> {
    await runner.query(`alter table team enable row level security`);
    await runner.query(
      `create policy own_team on team to ${APP_ROLE} using (id = ${TEAM}) with check (id = ${TEAM})`,
    );
    await runner.query(
      `create policy team_of_membership on team for select to ${APP_ROLE}
       using (exists (select from member where member.team_id = team.id and member.account_id = ${ACCOUNT}))`,
    );
    await grant(runner, 'team', 'select, insert, update (name, evidence_version)');
  }

  private async secureAccounts(runner: QueryRunner): Promise<void> {
    await runner.query(`alter table account enable row level security`);
    await runner.query(
      `create policy own_account on account to ${APP_ROLE} using (id = ${ACCOUNT}) with check (id = ${ACCOUNT})`,
    );
    await runner.query(
      `create policy team_mates on account for select to ${APP_ROLE}
       using (exists (select from member where member.account_id = account.id and member.team_id = ${TEAM}))`,
    );
    // A team mate's password hash is nobody's business: the column is not readable at all.
    await grant(runner, 'account', 'select (id, email, display_name, created_at), insert');
    await runner.query(`alter table sign_in enable row level security`);
    await runner.query(
      `create policy own_sign_in on sign_in to ${APP_ROLE}
       using (account_id = ${ACCOUNT}) with check (account_id = ${ACCOUNT})`,
    );
    await grant(runner, 'sign_in', 'select, insert, delete');
  }

  /** The few questions that must be answered before it is known who asks. They run with the owner's rights. */
  private async createDoors(runner: QueryRunner): Promise<void> {
    const doors = [
      `function sign_in_candidate(wanted_email text) returns table (id uuid, password_hash text)
       language sql stable security definer set search_path = public as
       $$ select id, password_hash from account where email = wanted_email $$`,

      `function request_scope(wanted_token_hash text, wanted_team_id uuid)
       returns table (account_id uuid, role text, rider_id uuid)
       language sql stable security definer set search_path = public as
       $$ select sign_in.account_id, member.role, member.rider_id
          from sign_in
          left join member on member.account_id = sign_in.account_id and member.team_id = wanted_team_id
          where sign_in.token_hash = wanted_token_hash and sign_in.expires_at > now() $$`,

      `function open_invitation(wanted_token_hash text)
       returns table (team_id uuid, id uuid, role text, rider_id uuid)
       language sql stable security definer set search_path = public as
       $$ select team_id, id, role, rider_id from invitation
          where token_hash = wanted_token_hash and used_at is null and expires_at > now() $$`,
    ];
    for (const door of doors) {
      await runner.query(`create ${door}`);
      const signature = /function (\w+)\(([^)]*)\)/.exec(door);
      const types = signature?.[2]?.replaceAll(/\w+ (\w+)/g, '$1') ?? '';
      await runner.query(`revoke all on function ${signature?.[1]}(${types}) from public`);
      await runner.query(`grant execute on function ${signature?.[1]}(${types}) to ${APP_ROLE}`);
    }
  }

  /** Migrations go forward only: a step back is a restore from the backup. */
  async down(): Promise<void> {
    throw new Error('Migrations go forward only.');
  }
}

/** Grants rights such as `select, insert, update (a, b)`. */
async function grant(runner: QueryRunner, table: string, rights: string): Promise<void> {
  await runner.query(`grant ${rights} on ${table} to ${APP_ROLE}`);
}
