import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';

/** Planned runs of one rider in the blind plans that are still open. */
const BLIND_RUNS = `planned_run planned
  join test_plan plan on plan.team_id = planned.team_id and plan.id = planned.plan_id
   and plan.blind and plan.closed_at is null
  where planned.team_id = $1 and planned.rider_id = $2`;

@Injectable()
export class BlindingQueries {
  /** Bikes whose set-ups the rider may not see now. */
  async bikes(transaction: Transaction, teamId: string, riderId: string): Promise<Set<string>> {
    const rows: { bikeId: string }[] = await transaction.query(
      `select distinct bike_id as "bikeId" from test_plan_arm arm
       where arm.team_id = $1 and arm.id in (select planned.arm_id from ${BLIND_RUNS})`,
      [teamId, riderId],
    );
    return new Set(rows.map(({ bikeId }) => bikeId));
  }

  /** Logged runs of which the rider may not see what was ridden. */
  async runs(transaction: Transaction, teamId: string, riderId: string): Promise<Set<string>> {
    const rows: { runId: string }[] = await transaction.query(
      `select planned.run_id as "runId" from ${BLIND_RUNS} and planned.run_id is not null`,
      [teamId, riderId],
    );
    return new Set(rows.map(({ runId }) => runId));
  }
}
