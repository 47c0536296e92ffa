import { Injectable } from '@nestjs/common';
import { momentOfMaking } from '../../platform/database/dated.js';
import { newId } from '../../platform/database/new-id.js';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import { toPage, type Page } from '../../platform/http/page.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { BikesService } from '../bikes/bikes.service.js';
import { Blinding } from '../blinding/blinding.js';
import { StoredSetups } from '../setups/stored-setups.js';
import type { DecisionEntity, Outcome } from './decision.entity.js';
import { decisionAnswer } from './decision-answer.js';
import { DecisionContextReader } from './decision-context.js';
import type { DecisionDto, DecisionFilter, DecisionListQuery, OutcomeInputDto } from './decisions.dto.js';
import { NoPlanOfBike, OutcomeAlreadyEntered } from './decisions.errors.js';
import { DecisionsQueries } from './decisions.queries.js';
import type { ExpectationDto } from './expectation.dto.js';

/** A decision as stored. */
export type Decision = Readonly<DecisionEntity>;

/** A change of a bike's set-up, to be remembered. */
export interface Change {
  readonly bikeId: string;
  readonly riderId: string;
  readonly fromSetupId: string | null;
  readonly toSetupId: string;
  readonly reason: string;
  readonly trackId: string | null;
  readonly baselineId: string | null;
  readonly expected: ExpectationDto | null;
  /** The test plan whose comparison it rests on. */
  readonly testPlanId?: string | null;
  /** Runs behind the expectation. */
  readonly evidenceRuns?: number | null;
}

@Injectable()
export class DecisionsService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: DecisionsQueries,
    private readonly contexts: DecisionContextReader,
    private readonly setups: StoredSetups,
    private readonly bikes: BikesService,
    private readonly blinding: Blinding,
  ) {}

  async list(scope: TeamScope, query: DecisionListQuery): Promise<Page<DecisionDto>> {
    return this.database.inTeam(scope, async (transaction) => {
      const { cursor, limit, ...wanted } = query;
      const filter = await this.filterOf(transaction, scope, wanted);
      const rows = await this.queries.page(transaction, scope.teamId, { cursor, limit }, filter);
      const answers = await this.answers(transaction, scope.teamId, rows);
      return toPage(rows, limit, ({ id }) => answers.get(id) as DecisionDto);
    });
  }

  /** Every decision that the member may see, oldest first. */
  async all(transaction: Transaction, scope: TeamScope, wanted: DecisionFilter): Promise<DecisionDto[]> {
    const filter = await this.filterOf(transaction, scope, wanted);
    const rows = await this.queries.all(transaction, scope.teamId, filter);
    return [...(await this.answers(transaction, scope.teamId, rows)).values()];
  }

  async get(scope: TeamScope, id: string): Promise<DecisionDto> {
    return this.database.inTeam(scope, async (transaction) => {
      const decision = await this.requireVisible(transaction, scope, id);
      await this.blinding.refuseHidden(transaction, scope, decision.bikeId);
      return this.answer(transaction, scope.teamId, decision);
    });
  }

  /** Enters what came of a decision, once; what was observed until now is frozen with it. */
  async enterOutcome(
    scope: TeamScope,
    id: string,
    version: number,
    input: OutcomeInputDto,
  ): Promise<DecisionDto> {
    return this.database.inTeam(scope, async (transaction) => {
      const { bikeId } = await this.requireVisible(transaction, scope, id);
      await this.blinding.refuseHidden(transaction, scope, bikeId);
      // Whoever changes the set-up at the same moment closes this decision too: one of the two waits, and finds it so.
      await this.setups.lockBike(transaction, scope.teamId, bikeId);
      const decision = await this.queries.require(transaction, scope.teamId, id);
      if (decision.outcome) throw new OutcomeAlreadyEntered(decision.outcome);
      const closed = await this.close(
        transaction,
        scope,
        { ...decision, version },
        input.outcome,
        input.note,
      );
      return this.answer(transaction, scope.teamId, closed);
    });
  }

  /**
   * Remembers a change, while the caller keeps others from changing the bike. An earlier decision that is still open
   * is superseded by it, or taken back.
   */
  async record(
    transaction: Transaction,
    scope: TeamScope,
    change: Change,
    earlierBecomes: Extract<Outcome, 'superseded' | 'taken back'>,
  ): Promise<Decision> {
    const { bikeId, testPlanId = null } = change;
    if (testPlanId && !(await this.queries.plansBike(transaction, scope.teamId, testPlanId, bikeId))) {
      throw new NoPlanOfBike(testPlanId);
    }
    for (const earlier of await this.queries.open(transaction, scope.teamId, bikeId)) {
      await this.close(transaction, scope, earlier, earlierBecomes);
    }
    return this.queries.insert(transaction, {
      teamId: scope.teamId,
      id: newId(),
      ...change,
      decidedBy: scope.accountId,
    });
  }

  /** The track that a set-up was decided for; null: for none in particular. */
  trackOfSetup(transaction: Transaction, teamId: string, setupId: string): Promise<string | null> {
    return this.queries.trackOfSetup(transaction, teamId, setupId);
  }

  /** All decisions whose outcome is still open. */
  allOpen(transaction: Transaction, teamId: string): Promise<readonly Decision[]> {
    return this.queries.open(transaction, teamId);
  }

  /** Every decision whose set-up was kept, oldest first. */
  allKept(transaction: Transaction, teamId: string): Promise<readonly Decision[]> {
    return this.queries.all(transaction, teamId, { outcome: 'kept' });
  }

  private async requireVisible(transaction: Transaction, scope: TeamScope, id: string): Promise<Decision> {
    const decision = await this.queries.require(transaction, scope.teamId, id);
    return this.bikes.requireOfVisible(transaction, scope, 'decision', decision);
  }

  private async close(
    transaction: Transaction,
    scope: TeamScope,
    decision: Decision,
    outcome: Outcome,
    note = '',
  ): Promise<DecisionEntity> {
    const { teamId, accountId } = scope;
    // Where nothing was expected nothing is judged: then it stays computed, so that runs entered later still show.
    const observed = decision.expected && (await this.contexts.observedOf(transaction, teamId, decision));
    return this.queries.change(transaction, teamId, decision.id, decision.version, {
      outcome,
      outcomeNote: note,
      outcomeBy: accountId,
      outcomeAt: momentOfMaking() ?? new Date(),
      observed,
    });
  }

  private async filterOf(transaction: Transaction, scope: TeamScope, { bikeId, ...wanted }: DecisionFilter) {
    const visible = await this.blinding.visibleFilter(transaction, scope, bikeId);
    return { ...visible, ...this.queries.wanted(wanted) };
  }

  private async answer(
    transaction: Transaction,
    teamId: string,
    decision: DecisionEntity,
  ): Promise<DecisionDto> {
    return (await this.answers(transaction, teamId, [decision])).get(decision.id) as DecisionDto;
  }

  private async answers(
    transaction: Transaction,
    teamId: string,
    decisions: readonly DecisionEntity[],
  ): Promise<Map<string, DecisionDto>> {
    const contexts = await this.contexts.of(transaction, teamId, decisions);
    return new Map(
      decisions.flatMap((decision, i) => {
        const context = contexts[i];
        return context ? [[decision.id, decisionAnswer(decision, context)]] : [];
      }),
    );
  }
}
