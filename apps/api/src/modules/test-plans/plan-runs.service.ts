import { Injectable } from '@nestjs/common';
import { ComputeThread } from '../../platform/compute/compute-thread.js';
import { needPlaceToCompute } from '../../platform/database/computing-places.js';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import { NotFound } from '../../platform/errors/refusal.js';
import { visibleRider, type TeamScope } from '../../platform/http/scope.js';
import { LogRun } from '../runs/log-run.js';
import { NotOwnRun } from '../runs/runs.errors.js';
import { RunsService } from '../runs/runs.service.js';
import { StoredRuns, type Run } from '../runs/stored-runs.js';
import { ORDER_REST } from './make-plan.js';
import { isBlindTo, type Plan } from './plan-answer.js';
import { PlanReader } from './plan-reader.js';
import type { PlanProgressDto, PlanStepDto } from './planned-run.dto.js';
import { runRow } from './planned-rows.js';
import {
  armOf,
  balancedProgress,
  countedRest,
  isRestStale,
  progressAnswer,
  restOf,
  type RiderPlace,
} from './rider-place.js';
import type { PlanRunInputDto, PlanVoidInputDto } from './test-plan-input.dto.js';
import { BlindToRider, MovedOn, NothingLeft, RiderNotOfPlan, RunNotOfPlan } from './test-plans.errors.js';
import { TestPlansQueries } from './test-plans.queries.js';

const WHERE = 'a session on the track of the plan, and its own session where it has one';

/** Rides a plan: logs and attaches its runs, and orders the rest anew when one is void. */
@Injectable()
export class PlanRunsService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: TestPlansQueries,
    private readonly reader: PlanReader,
    private readonly logRun: LogRun,
    private readonly runs: RunsService,
    private readonly stored: StoredRuns,
    private readonly computeThread: ComputeThread,
  ) {}

  /** Where each rider is in the plan; a rider sees their own place. */
  async progress(scope: TeamScope, planId: string): Promise<PlanProgressDto[]> {
    return this.database.inTeam(scope, async (transaction) => {
      const plan = await this.reader.visible(transaction, scope, planId);
      const own = visibleRider(scope);
      const riders = own ? [own] : ridersOf(plan);
      const places = await this.placesOf(transaction, plan, riders);
      return places.map((place) => progressAnswer(scope, plan, place));
    });
  }

  /** Logs the rider's next run of the plan, on the set-up of its arm. */
  async log(scope: TeamScope, planId: string, { position, ...input }: PlanRunInputDto): Promise<PlanStepDto> {
    return this.step(scope, planId, async (transaction, plan) => {
      const riderId = riderOf(scope, plan, input.riderId);
      const place = await this.placeOf(transaction, plan, riderId);
      const [next] = restOf(place);
      if (!next) throw new NothingLeft();
      if (position !== undefined && position !== next.position) throw new MovedOn(position, next.position);
      const { bikeId, setupId } = armOf(plan, next);
      const where = whereOf(plan, input);
      const run = await this.logRun.log(transaction, scope, { ...input, ...where, riderId, bikeId, setupId });
      if (isElsewhere(plan, run)) throw new RunNotOfPlan('sessionId', run.sessionId, WHERE);
      await this.queries.attachRun(transaction, scope.teamId, next.id, run.id);
      return run;
    });
  }

  /** Attaches a logged run to the first place that the rider has still to ride on its set-up. */
  async attach(scope: TeamScope, planId: string, runId: string): Promise<PlanStepDto> {
    return this.step(scope, planId, async (transaction, plan) => {
      const run = await this.stored.require(transaction, scope.teamId, runId);
      const own = visibleRider(scope);
      if (own && run.riderId !== own) throw new NotFound('run', runId);
      // Its place would tell the letter of its set-up.
      if (isBlindTo(scope, plan.row)) throw new BlindToRider();
      if (isElsewhere(plan, run)) throw new RunNotOfPlan('runId', runId, `a run in ${WHERE}`);
      const place = await this.placeOf(transaction, plan, run.riderId);
      const planned = restOf(place).find((open) => armOf(plan, open).setupId === run.setupId);
      if (!planned)
        throw new RunNotOfPlan(
          'runId',
          runId,
          'a run on the set-up of an arm that its rider has still to ride',
        );
      await this.queries.attachRun(transaction, scope.teamId, planned.id, runId);
      return run;
    });
  }

  /** Voids a run of the plan; what its rider has still to ride is ordered anew. */
  async voidRun(
    scope: TeamScope,
    planId: string,
    { runId, ...reason }: PlanVoidInputDto,
  ): Promise<PlanStepDto> {
    return this.step(scope, planId, async (transaction, plan) => {
      // To a rider, a run of somebody else is as one that is not there.
      const own = visibleRider(scope) ?? undefined;
      const standing = await this.queries.standingRuns(transaction, scope.teamId, plan.row.id, own);
      if (!standing.some((planned) => planned.runId === runId))
        throw new RunNotOfPlan('runId', runId, 'a run of this plan');
      return this.runs.voidWithin(transaction, scope, runId, reason);
    });
  }

  /** Orders anew what a rider has still to ride, after a run was voided or restored elsewhere. */
  async replan(scope: TeamScope, planId: string, wanted: string): Promise<PlanStepDto> {
    return this.step(scope, planId, async (_, plan) => ({ id: null, riderId: riderOf(scope, plan, wanted) }));
  }

  /** Does something with an open plan, brings the rider's rest up to date, and says where they are now. */
  private step(
    scope: TeamScope,
    planId: string,
    work: (transaction: Transaction, plan: Plan) => Promise<{ id: string | null; riderId: string }>,
  ): Promise<PlanStepDto> {
    return this.database.writeOnce(scope, async (transaction) => {
      const plan = await this.reader.open(transaction, scope, planId);
      const { id: runId, riderId } = await work(transaction, plan);
      let place = await this.placeOf(transaction, plan, riderId);
      if (isRestStale(plan, place)) {
        await this.orderRest(transaction, plan, place);
        place = await this.placeOf(transaction, plan, riderId);
      }
      await this.queries.change(transaction, scope.teamId, planId, plan.row.version, {});
      return { runId, ...progressAnswer(scope, plan, place) };
    });
  }

  private async orderRest(transaction: Transaction, plan: Plan, place: RiderPlace): Promise<void> {
    const { riderId, standing } = place;
    const bikeId = standing[0] ? armOf(plan, standing[0]).bikeId : '';
    const places = await this.placesOf(transaction, plan, ridersOf(plan));
    needPlaceToCompute();
    const order = await this.computeThread.run(ORDER_REST, {
      plan: plan.row.made,
      rider: riderId,
      progress: places.map((one) => balancedProgress(plan, one)),
    });
    await this.queries.dropRuns(
      transaction,
      plan.row.teamId,
      countedRest(place).map(({ id }) => id),
    );
    await this.queries.insertRuns(
      transaction,
      order.map((run) => runRow(plan.row, run, plan.arms, bikeId)),
    );
  }

  private async placesOf(
    transaction: Transaction,
    plan: Plan,
    riders: readonly string[],
  ): Promise<RiderPlace[]> {
    const places = [];
    for (const riderId of riders) places.push(await this.placeOf(transaction, plan, riderId));
    return places;
  }

  /** @throws RiderNotOfPlan */
  private async placeOf(transaction: Transaction, plan: Plan, riderId: string): Promise<RiderPlace> {
    const { teamId, id } = plan.row;
    const standing = await this.queries.standingRuns(transaction, teamId, id, riderId);
    if (standing.length === 0) throw new RiderNotOfPlan(riderId);
    return { riderId, standing, stored: await this.reader.storedOf(transaction, teamId, standing) };
  }
}

const ridersOf = ({ row }: Plan): string[] => [...new Set(row.made.runs.map(({ rider }) => rider))];

/** The rider that is meant: the one named, the member, or the only one. @throws RiderNotOfPlan, NotOwnRun */
function riderOf(scope: TeamScope, plan: Plan, wanted: string | undefined): string {
  const riders = ridersOf(plan);
  const own = visibleRider(scope);
  if (own && wanted && wanted !== own) throw new NotOwnRun();
  const riderId = wanted ?? own ?? (riders.length === 1 ? riders[0] : undefined);
  if (!riderId || !riders.includes(riderId)) throw new RiderNotOfPlan(riderId ?? null);
  return riderId;
}

/** The session of a run that is logged for a plan: the plan's, the one named, or the day's. */
function whereOf({ row }: Plan, { sessionId, day }: PlanRunInputDto) {
  const session = sessionId ?? row.sessionId;
  if (session) return { sessionId: session };
  const planned = day ?? row.day;
  return { trackId: row.trackId, ...(planned ? { day: planned } : {}) };
}

/** Whether the run was on the track and in the session of the plan. */
const isElsewhere = ({ row }: Plan, run: Run): boolean =>
  run.trackId !== row.trackId || (row.sessionId !== null && run.sessionId !== row.sessionId);
