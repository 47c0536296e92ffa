import { Injectable } from '@nestjs/common';
import { newId } from '../../platform/database/new-id.js';
import { byId } from '../../platform/database/rows-by.js';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import { toPage, type Page } from '../../platform/http/page.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { BikesService, type Bike } from '../bikes/bikes.service.js';
import { Blinding } from '../blinding/blinding.js';
import { DecisionsService, type Change } from '../decisions/decisions.service.js';
import { SpringUnitsService } from '../spring-units/spring-units.service.js';
import { setupAnswer, type Setup, type SetupFigures } from './setup-figures.js';
import { refuseFillOutsideLimits } from './setup-limits.js';
import type { SetupDto, SetupListQuery } from './setups.dto.js';
import { SetupsQueries } from './setups.queries.js';

/** Why a revision is made, and what was computed about it. */
export type Occasion = Omit<Change, 'bikeId' | 'riderId' | 'fromSetupId' | 'toSetupId'>;

export type { Setup, SetupFigures } from './setup-figures.js';

@Injectable()
export class SetupsService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: SetupsQueries,
    private readonly bikes: BikesService,
    private readonly units: SpringUnitsService,
    private readonly decisions: DecisionsService,
    private readonly blinding: Blinding,
  ) {}

  async list(scope: TeamScope, query: SetupListQuery): Promise<Page<SetupDto>> {
    return this.database.inTeam(scope, async (transaction) => {
      const filter = await this.blinding.visibleFilter(transaction, scope, query.bikeId);
      return toPage(
        await this.queries.page(transaction, scope.teamId, query, filter),
        query.limit,
        setupAnswer,
      );
    });
  }

  async get(scope: TeamScope, id: string): Promise<SetupDto> {
    return this.database.inTeam(scope, async (transaction) => {
      const setup = await this.requireVisible(transaction, scope, id);
      await this.blinding.refuseHidden(transaction, scope, setup.bikeId);
      return setupAnswer(setup);
    });
  }

  /** The bike's next revision, within its units' limits, with its decision record. */
  async revise(
    transaction: Transaction,
    scope: TeamScope,
    bike: Bike,
    figures: SetupFigures,
    occasion: Occasion,
    earlierBecomes: 'superseded' | 'taken back' = 'superseded',
  ): Promise<Setup> {
    await this.refuseOutsideLimits(transaction, scope.teamId, figures);
    await this.queries.lockBikes(transaction, scope.teamId, [bike.id]);
    const previous = await this.queries.latest(transaction, scope.teamId, bike.id);
    const setup = await this.queries.insert(transaction, {
      ...figures,
      teamId: scope.teamId,
      id: newId(),
      bikeId: bike.id,
      revision: (previous?.revision ?? 0) + 1,
      previousId: previous?.id ?? null,
      createdBy: scope.accountId,
    });
    const between = { fromSetupId: previous?.id ?? null, toSetupId: setup.id };
    const change = { bikeId: bike.id, riderId: bike.riderId, ...between, ...occasion };
    await this.decisions.record(transaction, scope, change, earlierBecomes);
    return setup;
  }

  require(transaction: Transaction, teamId: string, id: string): Promise<Setup> {
    return this.queries.require(transaction, teamId, id);
  }

  /** The set-up if the member may see its bike. */
  async requireVisible(transaction: Transaction, scope: TeamScope, id: string): Promise<Setup> {
    const setup = await this.queries.require(transaction, scope.teamId, id);
    return this.bikes.requireOfVisible(transaction, scope, 'set-up', setup);
  }

  /** These set-ups by their ids. */
  async byIds(transaction: Transaction, teamId: string, ids: readonly string[]): Promise<Map<string, Setup>> {
    return byId(await this.queries.byIds(transaction, teamId, ids));
  }

  latest(transaction: Transaction, teamId: string, bikeId: string): Promise<Setup | null> {
    return this.queries.latest(transaction, teamId, bikeId);
  }

  /** Makes others who would revise these bikes' set-ups wait for the end of this transaction. */
  lockBikes(transaction: Transaction, teamId: string, bikeIds: readonly string[]): Promise<void> {
    return this.queries.lockBikes(transaction, teamId, bikeIds);
  }

  /** Locks the bikes, and tells those that have a newer set-up than the one named; null: the bike had none. */
  async revisedSince(
    transaction: Transaction,
    teamId: string,
    named: ReadonlyMap<string, string | null>,
  ): Promise<string[]> {
    const bikeIds = [...named.keys()];
    await this.lockBikes(transaction, teamId, bikeIds);
    const changed: string[] = [];
    for (const bikeId of bikeIds) {
      const latest = await this.queries.latest(transaction, teamId, bikeId);
      if ((latest?.id ?? null) !== named.get(bikeId)) changed.push(bikeId);
    }
    return changed;
  }

  latestOfAll(transaction: Transaction, teamId: string): Promise<readonly Setup[]> {
    return this.queries.latestOfAll(transaction, teamId);
  }

  /** The last two set-ups of every bike, newest first. */
  lastTwoOfAll(transaction: Transaction, teamId: string): Promise<readonly Setup[]> {
    return this.queries.lastTwoOfAll(transaction, teamId);
  }

  /** All revisions of a bike, oldest first. */
  ofBike(transaction: Transaction, teamId: string, bikeId: string): Promise<readonly Setup[]> {
    return this.queries.all(transaction, teamId, { bikeId });
  }

  private async refuseOutsideLimits(
    transaction: Transaction,
    teamId: string,
    figures: SetupFigures,
  ): Promise<void> {
    const fork = await this.units.require(transaction, teamId, figures.forkUnitId);
    refuseFillOutsideLimits('fork', fork, { pressure: figures.forkPressure, spacers: figures.forkSpacers });
    if (figures.shockUnitId === null || figures.shockPressure === null) return;
    const shock = await this.units.require(transaction, teamId, figures.shockUnitId);
    refuseFillOutsideLimits('shock', shock, {
      pressure: figures.shockPressure,
      spacers: figures.shockSpacers ?? 0,
    });
  }
}
