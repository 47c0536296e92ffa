import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Where on a track run times begin and end. */
export class TrackGates1764850000000 implements MigrationInterface {
  name = 'TrackGates1764850000000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query('alter table track add start_gate jsonb, add finish_gate jsonb');
  }

  /** Migrations go forward only: a step back is a restore from the backup. */
  async down(): Promise<void> {
    throw new Error('Migrations go forward only.');
  }
}
