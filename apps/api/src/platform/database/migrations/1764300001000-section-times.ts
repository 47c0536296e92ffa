import type { MigrationInterface, QueryRunner } from 'typeorm';

/** A run may carry a time for each section of its track. */
export class SectionTimes1764300001000 implements MigrationInterface {
  name = 'SectionTimes1764300001000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`alter table run add section_times jsonb not null default '[]'`);
  }

  /** Migrations go forward only: a step back is a restore from the backup. */
  async down(): Promise<void> {
    throw new Error('Migrations go forward only.');
  }
}
