import type { MigrationInterface, QueryRunner } from 'typeorm';
import { APP_ROLE } from '../../../config/config.js';

/** The units in which a person reads and types. */
export class AccountUnits1764800000000 implements MigrationInterface {
  name = 'AccountUnits1764800000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`alter table account
      add pressure_unit text not null default 'psi',
      add mass_unit text not null default 'kg',
      add temperature_unit text not null default '°C',
      add version integer not null default 1`);
    const columns = 'pressure_unit, mass_unit, temperature_unit, version';
    // The policy of the table lets a person change their own row only.
    await runner.query(`grant select (${columns}), update (${columns}) on account to ${APP_ROLE}`);
  }

  /** Migrations go forward only: a step back is a restore from the backup. */
  async down(): Promise<void> {
    throw new Error('Migrations go forward only.');
  }
}
