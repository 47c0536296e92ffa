import { Injectable } from '@nestjs/common';
import { newId } from '../../platform/database/new-id.js';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import { toPage, type Page } from '../../platform/http/page.js';
import { visibleRider, type TeamScope } from '../../platform/http/scope.js';
import { BikesService } from '../bikes/bikes.service.js';
import { Blinding } from '../blinding/blinding.js';
import type { DecisionEntity, Outcome } from './decision.entity.js';
import type { DecisionDto, DecisionListQuery, ExpectationDto, OutcomeInputDto } from './decisions.dto.js';
import { OutcomeAlreadyEntered } from './decisions.errors.js';
import { DecisionsQueries } from './decisions.queries.js';

/** A decision as stored. */
export type Decision = Readonly<DecisionEntity>;

/** A change of a bike's set-up, to be remembered. */
export interface Change {
  readonly bikeId: string;
  readonly fromSetupId: string | null;
  readonly toSetupId: string;
  readonly reason: string;
  readonly trackId: string | null;
  readonly baselineId: string | null;
  readonly expected: ExpectationDto | null;
}

@Injectable()
export class DecisionsService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: DecisionsQueries,
    private readonly bikes: BikesService,
    private readonly blinding: Blinding,
  ) {}

  async list(scope: TeamScope, query: DecisionListQuery): Promise<Page<DecisionDto>> {
    return this.database.inTeam(scope, async (transaction) => {
      const bikeIds = await this.visibleBikes(transaction, scope, query.bikeId);
      const rows = await this.queries.page(transaction, scope.teamId, query, bikeIds);
      return toPage(rows, query.limit, answer);
    });
  }

  async get(scope: TeamScope, id: string): Promise<DecisionDto> {
    return this.database.inTeam(scope, async (transaction) => {
      const decision = await this.queries.require(transaction, scope.teamId, id);
      await this.bikes.requireVisible(transaction, scope, decision.bikeId);
      await this.blinding.refuseHidden(transaction, scope, decision.bikeId);
      return answer(decision);
    });
  }

  /** Enters what came of a decision, once. */
  async enterOutcome(
    scope: TeamScope,
    id: string,
    version: number,
    input: OutcomeInputDto,
  ): Promise<DecisionDto> {
    return this.database.inTeam(scope, async (transaction) => {
      const decision = await this.queries.require(transaction, scope.teamId, id);
      await this.bikes.requireVisible(transaction, scope, decision.bikeId);
      await this.blinding.refuseHidden(transaction, scope, decision.bikeId);
      if (decision.outcome) throw new OutcomeAlreadyEntered(decision.outcome);
      return answer(await this.close(transaction, scope, decision, version, input.outcome, input.note ?? ''));
    });
  }

  /** Remembers a change. An earlier decision that is still open is superseded by it, or taken back. */
  async record(
    transaction: Transaction,
    scope: TeamScope,
    change: Change,
    earlierBecomes: Extract<Outcome, 'superseded' | 'taken back'>,
  ): Promise<Decision> {
    for (const earlier of await this.queries.open(transaction, scope.teamId, change.bikeId)) {
      await this.close(transaction, scope, earlier, earlier.version, earlierBecomes, '');
    }
    return this.queries.insert(transaction, {
      teamId: scope.teamId,
      id: newId(),
      ...change,
      decidedBy: scope.accountId,
    });
  }

  /** All decisions whose outcome is still open. */
  allOpen(transaction: Transaction, teamId: string): Promise<readonly Decision[]> {
    return this.queries.open(transaction, teamId);
  }

  /** Every decision whose set-up was kept, oldest first. */
  allKept(transaction: Transaction, teamId: string): Promise<readonly Decision[]> {
    return this.queries.all(transaction, teamId, { outcome: 'kept' });
  }

  private close(
    transaction: Transaction,
    scope: TeamScope,
    decision: Decision,
    version: number,
    outcome: Outcome,
    note: string,
  ): Promise<DecisionEntity> {
    return this.queries.change(transaction, scope.teamId, decision.id, version, {
      outcome,
      outcomeNote: note,
      outcomeBy: scope.accountId,
      outcomeAt: new Date(),
    });
  }

  private async visibleBikes(transaction: Transaction, scope: TeamScope, bikeId: string | undefined) {
    if (bikeId) {
      await this.bikes.requireVisible(transaction, scope, bikeId);
      await this.blinding.refuseHidden(transaction, scope, bikeId);
      return { bikeId };
    }
    if (!visibleRider(scope)) return {};
    const own = await this.bikes.allVisible(transaction, scope);
    const hidden = await this.blinding.hiddenBikes(transaction, scope);
    return this.queries.ofBikes(own.map(({ id }) => id).filter((id) => !hidden.has(id)));
  }
}

const answer = (decision: Decision): DecisionDto => ({
  id: decision.id,
  decidedAt: decision.createdAt.toISOString(),
  bikeId: decision.bikeId,
  fromSetupId: decision.fromSetupId,
  toSetupId: decision.toSetupId,
  trackId: decision.trackId,
  baselineId: decision.baselineId,
  reason: decision.reason,
  expected: decision.expected,
  decidedBy: decision.decidedBy,
  outcome: decision.outcome,
  outcomeNote: decision.outcomeNote,
  outcomeAt: decision.outcomeAt?.toISOString() ?? null,
  version: decision.version,
});
