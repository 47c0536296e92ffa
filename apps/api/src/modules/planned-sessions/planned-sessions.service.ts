import { Injectable } from '@nestjs/common';
import { newId } from '../../platform/database/new-id.js';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import { InvalidField, NotFound } from '../../platform/errors/refusal.js';
import { toPage, type Page } from '../../platform/http/page.js';
import { visibleRider, type TeamScope } from '../../platform/http/scope.js';
import { RidersService } from '../riders/riders.service.js';
import { PlanReader } from '../test-plans/plan-reader.js';
import { TracksService } from '../tracks/tracks.service.js';
import type { PlannedSessionEntity } from './planned-session.entity.js';
import type {
  PlannedSessionDto,
  PlannedSessionInputDto,
  PlannedSessionListQuery,
} from './planned-sessions.dto.js';
import { PlannedSessionsQueries } from './planned-sessions.queries.js';

/** What a team means to ride on a day. Nothing is stored of what was ridden: runs find their session by themselves. */
@Injectable()
export class PlannedSessionsService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: PlannedSessionsQueries,
    private readonly tracks: TracksService,
    private readonly riders: RidersService,
    private readonly plans: PlanReader,
  ) {}

  /** Newest first; a rider sees those that they ride in. */
  async list(scope: TeamScope, query: PlannedSessionListQuery): Promise<Page<PlannedSessionDto>> {
    const filter = this.queries.filterOf({ ...query, riderId: visibleRider(scope) });
    const rows = await this.database.inTeam(scope, (transaction) =>
      this.queries.page(transaction, scope.teamId, query, filter),
    );
    return toPage(rows, query.limit, answer);
  }

  async get(scope: TeamScope, id: string): Promise<PlannedSessionDto> {
    return this.database.inTeam(scope, async (transaction) => {
      const session = await this.queries.require(transaction, scope.teamId, id);
      const own = visibleRider(scope);
      if (own !== null && !session.riderIds.includes(own)) throw new NotFound('planned session', id);
      return answer(session);
    });
  }

  async create(scope: TeamScope, input: PlannedSessionInputDto): Promise<PlannedSessionDto> {
    return this.database.writeOnce(scope, async (transaction) => {
      const columns = await this.checkedColumns(transaction, scope, input);
      return answer(
        await this.queries.insert(transaction, { teamId: scope.teamId, id: newId(), ...columns }),
      );
    });
  }

  async replace(
    scope: TeamScope,
    id: string,
    version: number,
    input: PlannedSessionInputDto,
  ): Promise<PlannedSessionDto> {
    return this.database.inTeam(scope, async (transaction) => {
      const columns = await this.checkedColumns(transaction, scope, input);
      return answer(await this.queries.change(transaction, scope.teamId, id, version, columns));
    });
  }

  async remove(scope: TeamScope, id: string): Promise<void> {
    await this.database.inTeam(scope, async (transaction) => {
      await this.queries.require(transaction, scope.teamId, id);
      await this.queries.remove(transaction, scope.teamId, id);
    });
  }

  private async checkedColumns(transaction: Transaction, scope: TeamScope, input: PlannedSessionInputDto) {
    const { trackId, day, startsAt, testPlanId = null, note = '' } = input;
    await this.tracks.require(transaction, scope.teamId, trackId);
    const riderIds = [...new Set(input.riderIds)];
    for (const id of riderIds) await this.riders.require(transaction, scope.teamId, id);
    if (testPlanId !== null) {
      const { row } = await this.plans.visible(transaction, scope, testPlanId);
      if (row.trackId !== trackId) {
        throw new InvalidField(
          'planned-session.plan-elsewhere',
          'testPlanId',
          testPlanId,
          'a test plan on this track',
        );
      }
    }
    return { trackId, day, startsAt, riderIds, testPlanId, note };
  }
}

export const answer = (session: PlannedSessionEntity): PlannedSessionDto => ({
  id: session.id,
  trackId: session.trackId,
  day: session.day,
  startsAt: session.startsAt,
  riderIds: session.riderIds,
  testPlanId: session.testPlanId,
  note: session.note,
  version: session.version,
});
