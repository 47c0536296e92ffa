import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Failures are forgotten after so much quiet. */
const FORGET = `interval '15 minutes'`;

/**
 * A clock that was set back must keep nobody out until it has caught up: a try in the future counts as made now, so
 * that its delay runs from here on.
 */
export class SetBackClocks1764820000000 implements MigrationInterface {
  name = 'SetBackClocks1764820000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(TAKE_TRY);
  }

  /** Migrations go forward only: a step back is a restore from the backup. */
  async down(): Promise<void> {
    throw new Error('Migrations go forward only.');
  }
}

const TAKE_TRY = `create or replace function
  take_try(wanted_key text, free_tries integer, first_delay float8, longest_delay float8)
  returns float8 language plpgsql volatile security definer set search_path = public, pg_temp as
  $$
  declare
    known sign_in_try;
    wait float8;
  begin
    insert into sign_in_try (key_hash, tries, last_at) values (wanted_key, 0, clock_timestamp())
      on conflict do nothing;
    select * into known from sign_in_try where key_hash = wanted_key for update;
    if known.last_at > clock_timestamp() then
      known.last_at := clock_timestamp();
      update sign_in_try set last_at = known.last_at where key_hash = wanted_key;
    end if;
    if known.last_at < clock_timestamp() - ${FORGET} then known.tries := 0; end if;
    if known.tries >= free_tries then
      wait := least(first_delay * 2 ^ least(known.tries - free_tries, 30), longest_delay)
        - extract(epoch from clock_timestamp() - known.last_at);
      if wait > 0 then return wait; end if;
    end if;
    update sign_in_try set tries = known.tries + 1, last_at = clock_timestamp() where key_hash = wanted_key;
    return 0;
  end
  $$`;
