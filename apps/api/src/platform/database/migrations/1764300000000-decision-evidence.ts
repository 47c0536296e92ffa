import type { MigrationInterface, QueryRunner } from 'typeorm';
import { APP_ROLE } from '../../../config/config.js';

/** Decisions name their rider and what they rest on, and keep what was observed when their outcome was entered. */
export class DecisionEvidence1764300000000 implements MigrationInterface {
  name = 'DecisionEvidence1764300000000';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of STATEMENTS) await runner.query(statement);
  }

  /** Migrations go forward only: a step back is a restore from the backup. */
  async down(): Promise<void> {
    throw new Error('Migrations go forward only.');
  }
}

const STATEMENTS = [
  `alter table decision add rider_id uuid, add test_plan_id uuid, add evidence_runs integer, add observed jsonb`,
  // The bike's rider now is the best that is known of decisions that did not name theirs.
  `update decision set rider_id = bike.rider_id from bike
   where bike.team_id = decision.team_id and bike.id = decision.bike_id`,
  `alter table decision alter rider_id set not null`,
  `alter table decision add constraint decision_rider_id_fk
   foreign key (team_id, rider_id) references rider (team_id, id)`,
  `alter table decision add constraint decision_test_plan_id_fk
   foreign key (team_id, test_plan_id) references test_plan (team_id, id)`,
  `create index decision_rider on decision (team_id, rider_id, id)`,
  `create index decision_track on decision (team_id, track_id, id)`,
  `create index run_setup on run (team_id, setup_id, id)`,
  `grant update (observed) on decision to ${APP_ROLE}`,
];
