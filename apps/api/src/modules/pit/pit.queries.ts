import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/team-database.js';

export interface LastDecision {
  readonly bikeId: string;
  readonly id: string;
  readonly decidedAt: Date;
  readonly reason: string;
  readonly toSetupId: string;
  readonly outcome: 'kept' | 'taken back' | 'superseded' | null;
}

export interface LastRun {
  readonly bikeId: string;
  readonly id: string;
  readonly trackId: string;
  readonly trackName: string;
  readonly day: string;
  readonly loggedAt: Date;
  readonly time: number | null;
  readonly isVoid: boolean;
  readonly setupId: string;
}

export interface OpenPlan {
  readonly bikeId: string;
  readonly id: string;
  readonly name: string;
  readonly riderId: string;
  readonly ridden: number;
  readonly left: number;
}

export interface MostSpacers {
  readonly unitId: string;
  readonly spacers: number;
}

/** What the pit asks of the whole fleet at once: a statement for each question, whatever the number of bikes. */
@Injectable()
export class PitQueries {
  /** The newest decision about each bike; a lookup in an index for each bike, not a walk through all decisions. */
  lastDecisions(transaction: Transaction, teamId: string): Promise<LastDecision[]> {
    return transaction.query(
      `select bike.id as "bikeId", last.id, last.created_at as "decidedAt", last.reason,
              last.to_setup_id as "toSetupId", last.outcome
       from bike cross join lateral (
         select * from decision where decision.team_id = bike.team_id and decision.bike_id = bike.id
         order by decision.id desc limit 1) last
       where bike.team_id = $1`,
      [teamId],
    );
  }

  /** The newest run on each bike. */
  lastRuns(transaction: Transaction, teamId: string): Promise<LastRun[]> {
    return transaction.query(
      `select bike.id as "bikeId", last.id, last.track_id as "trackId", track.name as "trackName",
              to_char(session.day, 'YYYY-MM-DD') as day, last.created_at as "loggedAt", last.time,
              last.voided_at is not null as "isVoid", last.setup_id as "setupId"
       from bike cross join lateral (
         select * from run where run.team_id = bike.team_id and run.bike_id = bike.id
         order by run.id desc limit 1) last
       join session on session.team_id = bike.team_id and session.id = last.session_id
       join track on track.team_id = bike.team_id and track.id = last.track_id
       where bike.team_id = $1
       order by last.id desc`,
      [teamId],
    );
  }

  /** The open test plans of each bike, and how far each of its riders is. */
  openPlans(transaction: Transaction, teamId: string): Promise<OpenPlan[]> {
    return transaction.query(
      `select arm.bike_id as "bikeId", plan.id, plan.name, planned.rider_id as "riderId",
              count(*) filter (where planned.kind = 'counted' and run.id is not null
                               and run.voided_at is null)::int as ridden,
              count(*) filter (where planned.kind = 'counted' and planned.run_id is null)::int as "left"
       from test_plan plan
       join planned_run planned on planned.team_id = plan.team_id and planned.plan_id = plan.id
        and planned.dropped_at is null
       join test_plan_arm arm on arm.team_id = planned.team_id and arm.id = planned.arm_id
       left join run on run.team_id = planned.team_id and run.id = planned.run_id
       where plan.team_id = $1 and plan.closed_at is null
       group by arm.bike_id, plan.id, plan.name, planned.rider_id
       order by plan.id`,
      [teamId],
    );
  }

  /** The most spacers that any set-up of an open plan with runs to come has in each unit. */
  mostPlanned(transaction: Transaction, teamId: string): Promise<MostSpacers[]> {
    return transaction.query(
      `select filled.unit_id as "unitId", max(filled.spacers)::int as spacers
       from test_plan plan
       join test_plan_arm arm on arm.team_id = plan.team_id and arm.plan_id = plan.id
       join setup on setup.team_id = arm.team_id and setup.id = arm.setup_id
       cross join lateral (values (setup.fork_unit_id, setup.fork_spacers),
                                  (setup.shock_unit_id, setup.shock_spacers)) filled (unit_id, spacers)
       where plan.team_id = $1 and plan.closed_at is null and filled.unit_id is not null
         and exists (select from planned_run planned
                     where planned.team_id = arm.team_id and planned.arm_id = arm.id
                       and planned.run_id is null and planned.dropped_at is null)
       group by filled.unit_id`,
      [teamId],
    );
  }
}
