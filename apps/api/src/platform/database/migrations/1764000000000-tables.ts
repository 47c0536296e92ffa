import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * All tables. Generated from the entities, then read: every key and every reference begins with the team, so that
 * no row can refer to another team's.
 */
export class Tables1764000000000 implements MigrationInterface {
  name = 'Tables1764000000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      create table account (
        id uuid not null,
        email text not null,
        display_name text not null,
        password_hash text not null,
        created_at timestamptz not null default now(),
        constraint account_pk primary key (id)
      )
    `);
    await runner.query(`
      create unique index account_email on account (email)
    `);
    await runner.query(`
      create table sign_in (
        token_hash text not null,
        account_id uuid not null,
        created_at timestamptz not null default now(),
        expires_at timestamptz not null,
        constraint sign_in_pk primary key (token_hash)
      )
    `);
    await runner.query(`
      create index sign_in_account on sign_in (account_id)
    `);
    await runner.query(`
      create table baseline (
        team_id uuid not null,
        id uuid not null,
        created_at timestamptz not null default now(),
        bike_id uuid not null,
        rider_id uuid not null,
        track_id uuid not null,
        setup_id uuid,
        fingerprint text not null,
        evidence_version integer not null,
        engine_version text not null,
        model_version text not null,
        run_count integer not null,
        answer jsonb not null,
        constraint baseline_pk primary key (team_id, id)
      )
    `);
    await runner.query(`
      create index baseline_latest on baseline (team_id, track_id, bike_id, id)
    `);
    await runner.query(`
      create table bike (
        team_id uuid not null,
        id uuid not null,
        created_at timestamptz not null default now(),
        name text not null,
        rider_id uuid not null,
        category text not null,
        mass float8 not null,
        front_unsprung_mass float8 not null,
        rear_unsprung_mass float8 not null,
        head_angle float8 not null,
        wheelbase float8 not null,
        front_wheel_travel float8 not null,
        rear_wheel_travel float8 not null,
        front_load_share float8,
        centre_of_mass_height float8,
        centre_of_mass_to_rear float8,
        leverage_table jsonb,
        sources jsonb not null,
        fork_unit_id uuid not null,
        shock_unit_id uuid,
        version integer not null default 1,
        constraint bike_pk primary key (team_id, id)
      )
    `);
    await runner.query(`
      create index bike_rider on bike (team_id, rider_id)
    `);
    await runner.query(`
      create unique index bike_name on bike (team_id, name)
    `);
    await runner.query(`
      create table decision (
        team_id uuid not null,
        id uuid not null,
        created_at timestamptz not null default now(),
        bike_id uuid not null,
        from_setup_id uuid,
        to_setup_id uuid not null,
        track_id uuid,
        baseline_id uuid,
        reason text not null,
        expected jsonb,
        decided_by uuid not null,
        outcome text,
        outcome_note text,
        outcome_by uuid,
        outcome_at timestamptz,
        version integer not null default 1,
        constraint decision_pk primary key (team_id, id)
      )
    `);
    await runner.query(`
      create unique index decision_setup on decision (team_id, to_setup_id)
    `);
    await runner.query(`
      create index decision_bike on decision (team_id, bike_id, id)
    `);
    await runner.query(`
      create table demand_fit (
        team_id uuid not null,
        "end" text not null,
        evidence_version integer not null,
        model_version text not null,
        fit jsonb not null,
        fitted_at timestamptz not null default now(),
        constraint demand_fit_pk primary key (team_id, "end")
      )
    `);
    await runner.query(`
      create table rider (
        team_id uuid not null,
        id uuid not null,
        created_at timestamptz not null default now(),
        name text not null,
        ready_mass float8 not null,
        ready_mass_source text not null,
        accepted_risk float8 not null,
        fork_sag_low float8 not null,
        fork_sag_high float8 not null,
        shock_sag_low float8 not null,
        shock_sag_high float8 not null,
        fork_reserve float8 not null,
        shock_reserve float8 not null,
        version integer not null default 1,
        constraint rider_pk primary key (team_id, id)
      )
    `);
    await runner.query(`
      create unique index rider_name on rider (team_id, name)
    `);
    await runner.query(`
      create table ring_reading (
        team_id uuid not null,
        id uuid not null,
        created_at timestamptz not null default now(),
        run_id uuid not null,
        "end" text not null,
        travel_used float8 not null,
        reading_sd float8 not null,
        hit_kind text,
        hit_height float8,
        hit_lower float8,
        hit_upper float8,
        log_height float8,
        log_sd float8,
        basis text not null,
        inputs jsonb not null,
        constraint ring_reading_pk primary key (team_id, id)
      )
    `);
    await runner.query(`
      create unique index ring_reading_end on ring_reading (team_id, run_id, "end")
    `);
    await runner.query(`
      create table run (
        team_id uuid not null,
        id uuid not null,
        created_at timestamptz not null default now(),
        session_id uuid not null,
        track_id uuid not null,
        rider_id uuid not null,
        bike_id uuid not null,
        setup_id uuid not null,
        order_in_session integer not null,
        started_at timestamptz,
        "time" float8,
        fork_bottom_outs integer,
        shock_bottom_outs integer,
        support_rating integer,
        comfort_rating integer,
        ride_height_rating integer,
        fatigue_rating integer,
        note text not null default '',
        logged_by uuid not null,
        voided_at timestamptz,
        void_reason text,
        voided_by uuid,
        readings_count boolean not null default true,
        constraint run_pk primary key (team_id, id)
      )
    `);
    await runner.query(`
      create index run_bike on run (team_id, bike_id, id)
    `);
    await runner.query(`
      create index run_rider on run (team_id, rider_id, id)
    `);
    await runner.query(`
      create index run_track on run (team_id, track_id, id)
    `);
    await runner.query(`
      create unique index run_order on run (team_id, session_id, rider_id, order_in_session)
    `);
    await runner.query(`
      create table session (
        team_id uuid not null,
        id uuid not null,
        created_at timestamptz not null default now(),
        track_id uuid not null,
        day date not null,
        condition text not null,
        air_temperature float8,
        station_pressure float8,
        note text not null default '',
        version integer not null default 1,
        constraint session_pk primary key (team_id, id)
      )
    `);
    await runner.query(`
      create index session_day on session (team_id, track_id, day)
    `);
    await runner.query(`
      create unique index session_track on session (team_id, id, track_id)
    `);
    await runner.query(`
      create table setup (
        team_id uuid not null,
        id uuid not null,
        created_at timestamptz not null default now(),
        bike_id uuid not null,
        revision integer not null,
        previous_id uuid,
        fork_unit_id uuid not null,
        fork_pressure float8 not null,
        fork_spacers integer not null,
        fork_rebound integer,
        fork_compression integer,
        shock_unit_id uuid,
        shock_pressure float8,
        shock_spacers integer,
        shock_rebound integer,
        shock_compression integer,
        filled_altitude float8,
        filled_temperature float8,
        note text not null default '',
        created_by uuid not null,
        constraint setup_pk primary key (team_id, id)
      )
    `);
    await runner.query(`
      create unique index setup_revision on setup (team_id, bike_id, revision)
    `);
    await runner.query(`
      create table spring_unit (
        team_id uuid not null,
        id uuid not null,
        created_at timestamptz not null default now(),
        name text not null,
        kind text not null,
        stroke float8 not null,
        bore_area float8 not null,
        shaft_area float8 not null,
        positive_volume float8 not null,
        spacer_volume float8 not null,
        negative_volume float8 not null,
        transfer_position float8 not null,
        lower_leg_volume float8 not null,
        lower_leg_area float8 not null,
        bumper_length float8 not null,
        bumper_end_force float8 not null,
        damper_low_speed float8 not null,
        damper_knee_speed float8 not null,
        damper_high_speed float8 not null,
        seal_friction float8 not null,
        thermal_time_positive float8 not null,
        thermal_time_negative float8 not null,
        thermal_time_lower_leg float8 not null,
        sources jsonb not null,
        min_pressure float8,
        max_pressure float8,
        max_spacers integer,
        spacers_in_stock integer not null default 0,
        version integer not null default 1,
        constraint spring_unit_pk primary key (team_id, id)
      )
    `);
    await runner.query(`
      create unique index spring_unit_name on spring_unit (team_id, name)
    `);
    await runner.query(`
      create table invitation (
        team_id uuid not null,
        id uuid not null,
        created_at timestamptz not null default now(),
        token_hash text not null,
        role text not null,
        rider_id uuid,
        expires_at timestamptz not null,
        used_at timestamptz,
        constraint invitation_pk primary key (team_id, id)
      )
    `);
    await runner.query(`
      create unique index invitation_token on invitation (team_id, token_hash)
    `);
    await runner.query(`
      create table member (
        team_id uuid not null,
        id uuid not null,
        created_at timestamptz not null default now(),
        account_id uuid not null,
        role text not null,
        rider_id uuid,
        constraint member_pk primary key (team_id, id)
      )
    `);
    await runner.query(`
      create index member_teams_of_account on member (account_id)
    `);
    await runner.query(`
      create unique index member_account on member (team_id, account_id)
    `);
    await runner.query(`
      create table team (
        id uuid not null,
        name text not null,
        evidence_version integer not null default 0,
        created_at timestamptz not null default now(),
        constraint team_pk primary key (id)
      )
    `);
    await runner.query(`
      create table track (
        team_id uuid not null,
        id uuid not null,
        created_at timestamptz not null default now(),
        name text not null,
        altitude float8 not null,
        note text not null default '',
        sections jsonb not null,
        version integer not null default 1,
        constraint track_pk primary key (team_id, id)
      )
    `);
    await runner.query(`
      create unique index track_name on track (team_id, name)
    `);
    await runner.query(`
      create table idempotency (
        team_id uuid not null,
        account_id uuid not null,
        key text not null,
        fingerprint text not null,
        answer jsonb,
        created_at timestamptz not null default now(),
        constraint idempotency_pk primary key (team_id, account_id, key)
      )
    `);
    await runner.query(`
      create index idempotency_age on idempotency (team_id, created_at)
    `);
    await runner.query(`
      alter table sign_in add constraint sign_in_account_id_fk foreign key (account_id) references account(id) on delete cascade
    `);
    await runner.query(`
      alter table baseline add constraint baseline_track_id_fk foreign key (team_id, track_id) references track(team_id,id)
    `);
    await runner.query(`
      alter table baseline add constraint baseline_rider_id_fk foreign key (team_id, rider_id) references rider(team_id,id)
    `);
    await runner.query(`
      alter table baseline add constraint baseline_setup_id_fk foreign key (team_id, setup_id) references setup(team_id,id)
    `);
    await runner.query(`
      alter table baseline add constraint baseline_bike_id_fk foreign key (team_id, bike_id) references bike(team_id,id)
    `);
    await runner.query(`
      alter table baseline add constraint baseline_team_id_fk foreign key (team_id) references team(id) on delete cascade
    `);
    await runner.query(`
      alter table bike add constraint bike_shock_unit_id_fk foreign key (team_id, shock_unit_id) references spring_unit(team_id,id)
    `);
    await runner.query(`
      alter table bike add constraint bike_fork_unit_id_fk foreign key (team_id, fork_unit_id) references spring_unit(team_id,id)
    `);
    await runner.query(`
      alter table bike add constraint bike_rider_id_fk foreign key (team_id, rider_id) references rider(team_id,id)
    `);
    await runner.query(`
      alter table bike add constraint bike_team_id_fk foreign key (team_id) references team(id) on delete cascade
    `);
    await runner.query(`
      alter table decision add constraint decision_baseline_id_fk foreign key (team_id, baseline_id) references baseline(team_id,id)
    `);
    await runner.query(`
      alter table decision add constraint decision_track_id_fk foreign key (team_id, track_id) references track(team_id,id)
    `);
    await runner.query(`
      alter table decision add constraint decision_to_setup_id_fk foreign key (team_id, to_setup_id) references setup(team_id,id)
    `);
    await runner.query(`
      alter table decision add constraint decision_from_setup_id_fk foreign key (team_id, from_setup_id) references setup(team_id,id)
    `);
    await runner.query(`
      alter table decision add constraint decision_bike_id_fk foreign key (team_id, bike_id) references bike(team_id,id)
    `);
    await runner.query(`
      alter table decision add constraint decision_team_id_fk foreign key (team_id) references team(id) on delete cascade
    `);
    await runner.query(`
      alter table demand_fit add constraint demand_fit_team_id_fk foreign key (team_id) references team(id) on delete cascade
    `);
    await runner.query(`
      alter table rider add constraint rider_team_id_fk foreign key (team_id) references team(id) on delete cascade
    `);
    await runner.query(`
      alter table ring_reading add constraint ring_reading_run_id_fk foreign key (team_id, run_id) references run(team_id,id) on delete cascade
    `);
    await runner.query(`
      alter table run add constraint run_setup_id_fk foreign key (team_id, setup_id) references setup(team_id,id)
    `);
    await runner.query(`
      alter table run add constraint run_bike_id_fk foreign key (team_id, bike_id) references bike(team_id,id)
    `);
    await runner.query(`
      alter table run add constraint run_rider_id_fk foreign key (team_id, rider_id) references rider(team_id,id)
    `);
    await runner.query(`
      alter table run add constraint run_session_id_track_id_fk foreign key (team_id, session_id, track_id) references session(team_id,id,track_id)
    `);
    await runner.query(`
      alter table run add constraint run_team_id_fk foreign key (team_id) references team(id) on delete cascade
    `);
    await runner.query(`
      alter table session add constraint session_track_id_fk foreign key (team_id, track_id) references track(team_id,id)
    `);
    await runner.query(`
      alter table session add constraint session_team_id_fk foreign key (team_id) references team(id) on delete cascade
    `);
    await runner.query(`
      alter table setup add constraint setup_previous_id_fk foreign key (team_id, previous_id) references setup(team_id,id)
    `);
    await runner.query(`
      alter table setup add constraint setup_shock_unit_id_fk foreign key (team_id, shock_unit_id) references spring_unit(team_id,id)
    `);
    await runner.query(`
      alter table setup add constraint setup_fork_unit_id_fk foreign key (team_id, fork_unit_id) references spring_unit(team_id,id)
    `);
    await runner.query(`
      alter table setup add constraint setup_bike_id_fk foreign key (team_id, bike_id) references bike(team_id,id)
    `);
    await runner.query(`
      alter table setup add constraint setup_team_id_fk foreign key (team_id) references team(id) on delete cascade
    `);
    await runner.query(`
      alter table spring_unit add constraint spring_unit_team_id_fk foreign key (team_id) references team(id) on delete cascade
    `);
    await runner.query(`
      alter table invitation add constraint invitation_rider_id_fk foreign key (team_id, rider_id) references rider(team_id,id)
    `);
    await runner.query(`
      alter table invitation add constraint invitation_team_id_fk foreign key (team_id) references team(id) on delete cascade
    `);
    await runner.query(`
      alter table member add constraint member_rider_id_fk foreign key (team_id, rider_id) references rider(team_id,id)
    `);
    await runner.query(`
      alter table member add constraint member_account_id_fk foreign key (account_id) references account(id)
    `);
    await runner.query(`
      alter table member add constraint member_team_id_fk foreign key (team_id) references team(id) on delete cascade
    `);
    await runner.query(`
      alter table track add constraint track_team_id_fk foreign key (team_id) references team(id) on delete cascade
    `);
    await runner.query(`
      alter table idempotency add constraint idempotency_team_id_fk foreign key (team_id) references team(id) on delete cascade
    `);
  }

  /** Migrations go forward only: a step back is a restore from the backup. */
  async down(): Promise<void> {
    throw new Error('Migrations go forward only.');
  }
}
