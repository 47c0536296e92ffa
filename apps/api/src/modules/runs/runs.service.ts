import { Injectable } from '@nestjs/common';
import { touchEvidence } from '../../platform/database/evidence-version.js';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import { NotFound } from '../../platform/errors/refusal.js';
import { toPage, type Page } from '../../platform/http/page.js';
import { visibleRider, type TeamScope } from '../../platform/http/scope.js';
import { Blinding } from '../blinding/blinding.js';
import { SessionsService } from '../sessions/sessions.service.js';
import type { End } from '../suspension/end-inputs.js';
import { HitHeights } from './hit-heights.js';
import { LogRun } from './log-run.js';
import type { RunEntity } from './run.entity.js';
import { runAnswer } from './run-answer.js';
import type { RunInputDto, VoidInputDto } from './run-input.dto.js';
import type { RunDto, RunListQuery } from './runs.dto.js';
import { AlreadyVoid, NotVoid } from './runs.errors.js';
import { RunsQueries, type CountingReading, type TrackReading } from './runs.queries.js';
import type { Run } from './stored-runs.js';

export type { CountingReading, TrackReading } from './runs.queries.js';

@Injectable()
export class RunsService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: RunsQueries,
    private readonly logRun: LogRun,
    private readonly hitHeights: HitHeights,
    private readonly sessions: SessionsService,
    private readonly blinding: Blinding,
  ) {}

  async list(scope: TeamScope, query: RunListQuery): Promise<Page<RunDto>> {
    const { cursor, limit, ...wanted } = query;
    const own = visibleRider(scope);
    // A filter for another rider's runs finds nothing, as if they were not there.
    if (own && wanted.riderId && wanted.riderId !== own) return { items: [], nextCursor: null };
    const filter = { ...definedOnly(wanted), ...(own ? { riderId: own } : {}) };
    return this.database.inTeam(scope, async (transaction) => {
      const rows = await this.queries.page(transaction, scope.teamId, { cursor, limit }, filter);
      const answers = await this.answers(transaction, scope, rows);
      return toPage(rows, limit, (row) => answers.get(row.id) as RunDto);
    });
  }

  async get(scope: TeamScope, id: string): Promise<RunDto> {
    return this.database.inTeam(scope, async (transaction) => {
      const run = await this.requireVisible(transaction, scope, id);
      return this.answer(transaction, scope, run);
    });
  }

  async log(scope: TeamScope, input: RunInputDto): Promise<RunDto> {
    return this.database.writeOnce(scope, async (transaction) => {
      const run = await this.logRun.log(transaction, scope, input);
      return this.answer(transaction, scope, run);
    });
  }

  /** Voids a run: it stays, with the reason, and its time no longer counts. */
  async voidRun(scope: TeamScope, id: string, input: VoidInputDto): Promise<RunDto> {
    return this.database.writeOnce(scope, async (transaction) =>
      this.answer(transaction, scope, await this.voidWithin(transaction, scope, id, input)),
    );
  }

  /** Voids a run as part of a larger change. */
  voidWithin(transaction: Transaction, scope: TeamScope, id: string, input: VoidInputDto): Promise<Run> {
    return this.setVoid(transaction, scope, id, (run) => {
      if (run.voidedAt) throw new AlreadyVoid();
      return {
        voidedAt: new Date(),
        voidReason: input.reason,
        voidedBy: scope.accountId,
        readingsCount: input.readingsCount ?? false,
      };
    });
  }

  /** Lets a voided run count again. */
  async restore(scope: TeamScope, id: string): Promise<RunDto> {
    return this.database.writeOnce(scope, async (transaction) => {
      const run = await this.setVoid(transaction, scope, id, ({ voidedAt }) => {
        if (!voidedAt) throw new NotVoid();
        return { voidedAt: null, voidReason: null, voidedBy: null, readingsCount: true };
      });
      return this.answer(transaction, scope, run);
    });
  }

  /** Every reading of one end that the demand model may use, found on the newest figures. */
  async countingReadings(transaction: Transaction, teamId: string, end: End): Promise<CountingReading[]> {
    await this.hitHeights.refresh(transaction, teamId);
    return this.queries.countingReadings(transaction, teamId, end);
  }

  /** Every reading of one end on a track that the member may see. */
  async trackReadings(
    transaction: Transaction,
    scope: TeamScope,
    end: End,
    trackId: string,
  ): Promise<TrackReading[]> {
    const filter = { end, trackId, riderId: visibleRider(scope) };
    const hidden = await this.blinding.hiddenRuns(transaction, scope);
    const readings = await this.queries.trackReadings(transaction, scope.teamId, filter);
    return readings.filter(({ runId }) => !hidden.has(runId));
  }

  countByBike(transaction: Transaction, teamId: string) {
    return this.queries.countByBike(transaction, teamId);
  }

  private async setVoid(
    transaction: Transaction,
    scope: TeamScope,
    id: string,
    change: (run: RunEntity) => Pick<RunEntity, 'voidedAt' | 'voidReason' | 'voidedBy' | 'readingsCount'>,
  ): Promise<RunEntity> {
    const run = await this.requireVisible(transaction, scope, id);
    const columns = change(run);
    await this.queries.setVoid(transaction, scope.teamId, id, columns);
    await touchEvidence(transaction, scope.teamId);
    return { ...run, ...columns };
  }

  private async requireVisible(transaction: Transaction, scope: TeamScope, id: string): Promise<RunEntity> {
    const run = await this.queries.require(transaction, scope.teamId, id);
    const own = visibleRider(scope);
    if (own && run.riderId !== own) throw new NotFound('run', id);
    return run;
  }

  private async answer(transaction: Transaction, scope: TeamScope, run: RunEntity): Promise<RunDto> {
    return (await this.answers(transaction, scope, [run])).get(run.id) as RunDto;
  }

  private async answers(
    transaction: Transaction,
    scope: TeamScope,
    runs: readonly RunEntity[],
  ): Promise<Map<string, RunDto>> {
    const { teamId } = scope;
    const hidden = await this.blinding.hiddenRuns(transaction, scope);
    const sessionIds = [...new Set(runs.map(({ sessionId }) => sessionId))];
    const sessions = await this.sessions.byIds(transaction, teamId, sessionIds);
    const readings = await this.queries.readingsOf(
      transaction,
      teamId,
      runs.map(({ id }) => id),
    );
    return new Map(
      runs.map((run) => {
        const session = sessions.get(run.sessionId);
        if (!session) throw new Error(`Run ${run.id} has no session: the foreign key forbids it.`);
        const own = readings.filter(({ runId }) => runId === run.id);
        const { day, condition } = session;
        return [run.id, runAnswer(run, { day, condition, readings: own, hidden: hidden.has(run.id) })];
      }),
    );
  }
}

const definedOnly = <T extends object>(record: T): T =>
  Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as T;
