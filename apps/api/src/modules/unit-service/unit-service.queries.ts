import { Injectable } from '@nestjs/common';
import { In } from 'typeorm';
import type { Transaction } from '../../platform/database/team-database.js';
import { TeamRows } from '../../platform/database/team-rows.js';
import { ServiceEntryEntity } from './service-entry.entity.js';
import { UnitCareEntity } from './unit-care.entity.js';

/** Riding of a unit since its last service, s, and what it is made of. */
export interface Riding {
  readonly unitId: string;
  readonly lastServiceDay: string | null;
  readonly timedRuns: number;
  readonly timed: number;
  readonly assumedRuns: number;
  readonly assumed: number;
  readonly uncountedRuns: number;
  readonly entered: number;
}

@Injectable()
export class UnitServiceQueries extends TeamRows<ServiceEntryEntity> {
  constructor() {
    super(ServiceEntryEntity, 'service entry');
  }

  /**
   * Riding of every unit of the team, or of one, from the day of its last service on. A run belongs to the units of the
   * set-up it was ridden on; one without a time counts as the mean of its track; a void one was ridden too.
   */
  riding(transaction: Transaction, teamId: string, unitId: string | null): Promise<Riding[]> {
    return transaction.query(RIDING, [teamId, unitId]);
  }

  /** The newest care of every unit of the team, or of one. */
  async care(transaction: Transaction, teamId: string, unitId: string | null): Promise<UnitCareEntity[]> {
    return transaction
      .createQueryBuilder(UnitCareEntity, 'care')
      .distinctOn(['care.unit_id'])
      .where('care.team_id = :teamId and (:unitId::uuid is null or care.unit_id = :unitId)', {
        teamId,
        unitId,
      })
      .orderBy('care.unit_id')
      .addOrderBy('care.id', 'DESC')
      .getMany();
  }

  async insertCare(transaction: Transaction, care: Omit<UnitCareEntity, 'createdAt'>): Promise<void> {
    await transaction.insert(UnitCareEntity, care);
  }

  /** Makes others who would take back an entry about the unit wait for the end of this transaction. */
  async lockUnit(transaction: Transaction, teamId: string, unitId: string): Promise<void> {
    await transaction.query('select from spring_unit where team_id = $1 and id = $2 for no key update', [
      teamId,
      unitId,
    ]);
  }

  /** Those of these entries that others take back. */
  async takenBack(transaction: Transaction, teamId: string, ids: readonly string[]): Promise<Set<string>> {
    if (ids.length === 0) return new Set();
    const rows = await this.all(transaction, teamId, { takesBackId: In([...ids]) });
    return new Set(rows.map(({ takesBackId }) => takesBackId ?? ''));
  }
}

const RIDING = `
  with standing as (
    select * from service_entry entry
    where entry.team_id = $1 and entry.takes_back_id is null and ($2::uuid is null or entry.unit_id = $2)
      and not exists (select from service_entry back
                      where back.team_id = entry.team_id and back.takes_back_id = entry.id)
  ), unit as (
    select spring_unit.id, (select max(day) from standing
                            where standing.unit_id = spring_unit.id and standing.kind = 'service') as last_day
    from spring_unit where spring_unit.team_id = $1 and ($2::uuid is null or spring_unit.id = $2)
  ), mean as (
    select track_id, avg(time) as time from run where team_id = $1 and time is not null group by track_id
  ), ridden as (
    select unit.id as unit_id, run.time, mean.time as usual
    from unit
    join setup on setup.team_id = $1 and unit.id in (setup.fork_unit_id, setup.shock_unit_id)
    join run on run.team_id = setup.team_id and run.setup_id = setup.id
    join session on session.team_id = run.team_id and session.id = run.session_id
     and (unit.last_day is null or session.day >= unit.last_day)
    left join mean on mean.track_id = run.track_id
  ), runs as (
    select unit_id, count(time) as timed_runs, sum(time) as timed,
           count(*) filter (where time is null and usual is not null) as assumed_runs,
           sum(usual) filter (where time is null) as assumed,
           count(*) filter (where time is null and usual is null) as uncounted_runs
    from ridden group by unit_id
  )
  select unit.id as "unitId", to_char(unit.last_day, 'YYYY-MM-DD') as "lastServiceDay",
         coalesce(runs.timed_runs, 0)::int as "timedRuns", coalesce(runs.timed, 0) as timed,
         coalesce(runs.assumed_runs, 0)::int as "assumedRuns", coalesce(runs.assumed, 0) as assumed,
         coalesce(runs.uncounted_runs, 0)::int as "uncountedRuns",
         coalesce((select sum(standing.riding) from standing
                   where standing.unit_id = unit.id and standing.kind = 'hours'
                     and (unit.last_day is null or standing.day >= unit.last_day)), 0) as entered
  from unit left join runs on runs.unit_id = unit.id
  order by unit.id`;
