import { Injectable } from '@nestjs/common';
import { namesOf } from '../../platform/database/names-of.js';
import type { Transaction } from '../../platform/database/team-database.js';
import { StoredRuns, type RunWithReadings } from '../runs/stored-runs.js';
import { setupAnswer } from '../setups/setup-figures.js';
import { StoredSetups } from '../setups/stored-setups.js';
import type { DecisionEntity, Observed } from './decision.entity.js';
import { observe } from './observe.js';
import type { SetupChangeDto } from './setup-change.dto.js';
import { setupChanges } from './setup-changes.js';

/** What a decision's answer needs beside its own row. */
export interface DecisionContext {
  readonly changes: readonly SetupChangeDto[];
  readonly observed: Observed;
  /** null: no longer in the team. */
  readonly decidedByName: string | null;
}

/** Reads what belongs to decisions: the set-ups they went between, the runs since, the people. */
@Injectable()
export class DecisionContextReader {
  constructor(
    private readonly setups: StoredSetups,
    private readonly runs: StoredRuns,
  ) {}

  /** The contexts of these decisions, in their order. */
  async of(
    transaction: Transaction,
    teamId: string,
    decisions: readonly DecisionEntity[],
  ): Promise<DecisionContext[]> {
    const setupIds = decisions.flatMap(({ fromSetupId, toSetupId }) => [fromSetupId ?? [], toSetupId].flat());
    const rows = await this.setups.byIds(transaction, teamId, [...new Set(setupIds)]);
    const setups = new Map(rows.map((setup) => [setup.id, setupAnswer(setup)]));
    const names = await namesOf(
      transaction,
      decisions.map(({ decidedBy }) => decidedBy),
    );
    const ridden = await this.riddenOn(
      transaction,
      teamId,
      decisions.filter(({ observed }) => observed === null),
    );
    return decisions.map((decision) => {
      const from = setups.get(decision.fromSetupId ?? '');
      const to = setups.get(decision.toSetupId);
      return {
        changes: from && to ? setupChanges(from, to) : [],
        observed: decision.observed ?? observe(decision.expected, ridden.get(decision.id) ?? []),
        decidedByName: names.get(decision.decidedBy) ?? null,
      };
    });
  }

  /** What the runs since have shown until now. */
  async observedOf(transaction: Transaction, teamId: string, decision: DecisionEntity): Promise<Observed> {
    const ridden = await this.riddenOn(transaction, teamId, [decision]);
    return observe(decision.expected, ridden.get(decision.id) ?? []);
  }

  /** The runs of the decision's rider on its set-up and, where it was for one, its track. */
  private async riddenOn(
    transaction: Transaction,
    teamId: string,
    decisions: readonly DecisionEntity[],
  ): Promise<Map<string, RunWithReadings[]>> {
    const setupIds = decisions.map(({ toSetupId }) => toSetupId);
    const ridden = await this.runs.onSetups(transaction, teamId, setupIds);
    return new Map(
      decisions.map(({ id, toSetupId, riderId, trackId }) => [
        id,
        ridden.filter(
          ({ run }) =>
            run.setupId === toSetupId &&
            run.riderId === riderId &&
            (trackId === null || run.trackId === trackId),
        ),
      ]),
    );
  }
}
