import type { MigrationInterface, QueryRunner } from 'typeorm';

/** What a change of each table is called, and which of its columns name the bike and the rider it belongs to. */
const ANNOUNCED: Readonly<Record<string, readonly [kind: string, bike: string, rider: string]>> = {
  run: ['run', 'bike_id', 'rider_id'],
  setup: ['setup', 'bike_id', ''],
  decision: ['decision', 'bike_id', ''],
  test_plan: ['plan', '', ''],
  planned_run: ['plan', '', 'rider_id'],
  bike: ['bike', 'id', 'rider_id'],
  rider: ['rider', '', 'id'],
  spring_unit: ['unit', '', ''],
  track: ['track', '', ''],
  session: ['session', '', ''],
};

/**
 * Announcements of what a transaction changes, made by the database itself: no way of writing can forget them, they
 * are made if and only if the transaction commits, and the same announcement in one transaction is made once.
 */
export class LiveEvents1764700000000 implements MigrationInterface {
  name = 'LiveEvents1764700000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(ANNOUNCE_CHANGE);
    await runner.query(ANNOUNCE_ACCESS);
    for (const [table, names] of Object.entries(ANNOUNCED)) {
      const given = names.map((name) => `'${name}'`).join(', ');
      await runner.query(
        `create trigger announce_change after insert or update on ${table}
         for each row execute function announce_change(${given})`,
      );
    }
    await runner.query(
      `create trigger announce_access after insert or update or delete on member
       for each row execute function announce_access()`,
    );
    await runner.query(
      `create trigger announce_access after delete on sign_in
       for each row execute function announce_access()`,
    );
  }

  /** Migrations go forward only: a step back is a restore from the backup. */
  async down(): Promise<void> {
    throw new Error('Migrations go forward only.');
  }
}

const ANNOUNCE_CHANGE = `
  create function announce_change() returns trigger language plpgsql set search_path = public as $$
  declare
    changed jsonb := to_jsonb(new);
    of_team uuid := (changed ->> 'team_id')::uuid;
    of_bike uuid := (changed ->> tg_argv[1])::uuid;
    of_rider uuid := (changed ->> tg_argv[2])::uuid;
  begin
    if of_rider is null and of_bike is not null then
      select bike.rider_id into of_rider from bike where bike.team_id = of_team and bike.id = of_bike;
    end if;
    perform pg_notify('team_changes', json_build_object(
      'team', of_team, 'kind', tg_argv[0], 'bike', of_bike, 'rider', of_rider)::text);
    return null;
  end $$`;

const ANNOUNCE_ACCESS = `
  create function announce_access() returns trigger language plpgsql set search_path = public as $$
  declare
    changed jsonb;
  begin
    if tg_op = 'DELETE' then changed := to_jsonb(old); else changed := to_jsonb(new); end if;
    perform pg_notify('team_changes', json_build_object(
      'team', changed ->> 'team_id', 'kind', 'access', 'account', changed ->> 'account_id')::text);
    return null;
  end $$`;
