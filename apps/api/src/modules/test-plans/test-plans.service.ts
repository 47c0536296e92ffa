import { randomInt } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { ComputeThread } from '../../platform/compute/compute-thread.js';
import { newId } from '../../platform/database/new-id.js';
import { needPlaceToCompute } from '../../platform/database/computing-places.js';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import { toPage, type Page } from '../../platform/http/page.js';
import { visibleRider, type TeamScope } from '../../platform/http/scope.js';
import { PastRuns } from '../scatter/past-runs.js';
import { refuseOddArms, refuseOddSetups } from './check-arms.js';
import { MAKE_PLAN, MOST_RUNS_OF_A_RIDER, type PlanWish } from './make-plan.js';
import { planAnswer, precisionAnswer, statementAnswer, summaryAnswer, type Plan } from './plan-answer.js';
import type { PlanPreviewDto, PlanPreviewInputDto } from './plan-preview.dto.js';
import { PlanReader } from './plan-reader.js';
import { PlanRecords } from './plan-records.js';
import { plannedRows } from './planned-rows.js';
import type { TestPlanInputDto } from './test-plan-input.dto.js';
import type {
  PlanRiderStandingDto,
  TestPlanDto,
  TestPlanListQuery,
  TestPlanSummaryDto,
} from './test-plans.dto.js';
import { ScatterUnknown, SizeUnclear, TooManyRuns } from './test-plans.errors.js';
import { TestPlansQueries, type RiderStanding } from './test-plans.queries.js';

const PER_CENT = 100;
const SEEDS = 2 ** 31;
/** Of time, where the team has set none. */
const DEFAULT_MARGIN_PCT = 1;
const DEFAULT_LOOKS = 'at the end';

/** Of the plans of one size, any is as good as the other to say what they could tell. */
const ANY_SEED = 0;

/** What an order and its statement are made from. */
type PlanSize = Pick<
  TestPlanInputDto,
  'runsAnArm' | 'differenceToTellPct' | 'marginPct' | 'trend' | 'looks' | 'warmUps'
> &
  Pick<PlanWish, 'arms' | 'riders' | 'seed' | 'blind'>;

/** Makes, shows and closes test plans. */
@Injectable()
export class TestPlansService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: TestPlansQueries,
    private readonly reader: PlanReader,
    private readonly records: PlanRecords,
    private readonly pastRuns: PastRuns,
    private readonly computeThread: ComputeThread,
  ) {}

  async list(
    scope: TeamScope,
    { trackId, state, ...page }: TestPlanListQuery,
  ): Promise<Page<TestPlanSummaryDto>> {
    const own = visibleRider(scope);
    return this.database.inTeam(scope, async (transaction) => {
      const visible = own ? await this.queries.ofRider(transaction, scope.teamId, own) : {};
      const filter = {
        ...visible,
        ...(trackId ? { trackId } : {}),
        ...(state ? this.queries.inState(state) : {}),
      };
      const rows = await this.queries.page(transaction, scope.teamId, page, filter);
      const ids = rows.map(({ id }) => id);
      const standings = await this.queries.standingsOf(transaction, scope.teamId, ids, own);
      return toPage(rows, page.limit, (row) => summaryAnswer(row, ridersIn(row, standings)));
    });
  }

  async get(scope: TeamScope, id: string): Promise<TestPlanDto> {
    return this.database.inTeam(scope, async (transaction) =>
      this.answer(transaction, scope, await this.reader.visible(transaction, scope, id)),
    );
  }

  /** What a plan of this size could tell by the team's own scatter. Stores nothing. */
  async preview(scope: TeamScope, input: PlanPreviewInputDto): Promise<PlanPreviewDto> {
    const pastRuns = await this.database.inTeam(scope, (transaction) =>
      this.pastRuns.besides(transaction, scope.teamId, []),
    );
    const size = { ...input, arms: numbered('arm', input.arms), riders: numbered('rider', input.riders) };
    const { plan, runsAnArm, scatter } = await this.make(pastRuns, { ...size, seed: ANY_SEED, blind: false });
    return {
      runsAnArm,
      precision: precisionAnswer(plan),
      statement: statementAnswer(plan, scatter),
    };
  }

  /** Makes a plan: the order, and what it can tell by the team's own scatter. */
  async create(scope: TeamScope, input: TestPlanInputDto): Promise<TestPlanDto> {
    refuseOddArms(input);
    return this.database.writeOnce(scope, async (transaction) => {
      const place = await this.records.placeOf(transaction, scope.teamId, input);
      refuseOddSetups(input, await this.records.setupsOf(transaction, scope.teamId, input));
      needPlaceToCompute();
      const pastRuns = await this.pastRuns.besides(transaction, scope.teamId, []);
      const {
        plan: made,
        runsAnArm,
        scatter,
      } = await this.make(pastRuns, {
        ...input,
        arms: input.arms.map(({ name }) => name),
        riders: input.riders.map(({ riderId }) => riderId),
        seed: input.seed ?? randomInt(SEEDS),
        blind: input.blind ?? false,
      });
      const row = await this.queries.insert(transaction, {
        teamId: scope.teamId,
        id: newId(),
        name: input.name,
        ...place,
        margin: marginOf(input),
        trend: input.trend ?? 'linear',
        seed: made.seed,
        blind: made.blind,
        looks: input.looks ?? DEFAULT_LOOKS,
        warmUps: warmUpsOf(input),
        runsAnArm,
        made,
        scatter,
        createdBy: scope.accountId,
      });
      const rows = plannedRows(row, input);
      await this.queries.insertArms(transaction, rows.arms);
      await this.queries.insertRuns(transaction, rows.runs);
      return this.answer(transaction, scope, await this.reader.visible(transaction, scope, row.id));
    });
  }

  /** Closes a plan: nothing more is attached, and riders see what the letters stood for. */
  async close(scope: TeamScope, id: string, version: number, note: string): Promise<TestPlanDto> {
    return this.database.inTeam(scope, async (transaction) => {
      const plan = await this.reader.open(transaction, scope, id);
      const closing = { closedAt: new Date(), closedBy: scope.accountId, closingNote: note };
      const row = await this.queries.change(transaction, scope.teamId, id, version, closing);
      return this.answer(transaction, scope, { ...plan, row });
    });
  }

  private async make(pastRuns: PlanWish['pastRuns'], input: PlanSize) {
    const outcome = await this.computeThread.run(MAKE_PLAN, {
      arms: input.arms,
      riders: input.riders,
      warmUps: warmUpsOf(input),
      seed: input.seed,
      blind: input.blind,
      trend: input.trend ?? 'linear',
      looks: input.looks ?? DEFAULT_LOOKS,
      margin: marginOf(input),
      size: sizeOf(input),
      pastRuns,
    });
    if ('plan' in outcome) return outcome;
    const { runsAnArm, differenceToTellPct = 0 } = input;
    if (outcome.refused === 'scatter unknown') throw new ScatterUnknown(differenceToTellPct);
    if (runsAnArm !== undefined) throw new TooManyRuns('runsAnArm', runsAnArm, null, MOST_RUNS_OF_A_RIDER);
    throw new TooManyRuns(
      'differenceToTellPct',
      differenceToTellPct,
      outcome.runsAnArm,
      MOST_RUNS_OF_A_RIDER,
    );
  }

  private async answer(transaction: Transaction, scope: TeamScope, plan: Plan): Promise<TestPlanDto> {
    const { teamId, id } = plan.row;
    const planned = await this.queries.standingRuns(transaction, teamId, id);
    const stored = await this.reader.storedOf(transaction, teamId, planned);
    const standing = planned.map((run) => ({ planned: run, run: stored.get(run.runId ?? '') }));
    const standings = await this.queries.standingsOf(transaction, teamId, [id], visibleRider(scope));
    return planAnswer(scope, plan, standing, ridersIn(plan.row, standings));
  }
}

const ridersIn = ({ id }: Plan['row'], standings: readonly RiderStanding[]): PlanRiderStandingDto[] =>
  standings
    .filter(({ planId }) => planId === id)
    .map(({ riderId, bikeId, ridden, left }) => ({ riderId, bikeId, ridden, left }));

const numbered = (what: string, count: number): string[] =>
  Array.from({ length: count }, (_, i) => `${what} ${i + 1}`);

const marginOf = (input: Pick<TestPlanInputDto, 'marginPct'>): number =>
  (input.marginPct ?? DEFAULT_MARGIN_PCT) / PER_CENT;

const warmUpsOf = (input: Pick<TestPlanInputDto, 'warmUps'>): number => input.warmUps ?? 1;

/** @throws SizeUnclear unless exactly one of the two was given. */
function sizeOf({ runsAnArm, differenceToTellPct }: PlanSize): PlanWish['size'] {
  if (runsAnArm !== undefined && differenceToTellPct === undefined) return { runsAnArm };
  if (runsAnArm === undefined && differenceToTellPct !== undefined) {
    return { differenceToTell: differenceToTellPct / PER_CENT };
  }
  throw new SizeUnclear(runsAnArm ?? null);
}
