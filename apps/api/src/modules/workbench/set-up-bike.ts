import { SpringInputError } from '@loamledger/spring';
import { Injectable } from '@nestjs/common';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { BikesService, type Bike } from '../bikes/bikes.service.js';
import { Blinding } from '../blinding/blinding.js';
import { DecisionsService } from '../decisions/decisions.service.js';
import { figuresOf, figuresOfSetup, setupAnswer } from '../setups/setup-figures.js';
import type { SetupDto, SetupInputDto } from '../setups/setups.dto.js';
import { NothingToRestore } from '../setups/setups.errors.js';
import { SetupsService, type SetupFigures } from '../setups/setups.service.js';
import { BikeRecordsReader } from './bike-records.js';
import { FreezeExpectation, type Frozen } from './freeze-expectation.js';

/** Sets a bike up as somebody says it is, with the decision and, for a track, what is expected there. */
@Injectable()
export class SetUpBike {
  constructor(
    private readonly database: TeamDatabase,
    private readonly bikes: BikesService,
    private readonly records: BikeRecordsReader,
    private readonly setups: SetupsService,
    private readonly decisions: DecisionsService,
    private readonly blinding: Blinding,
    private readonly expectation: FreezeExpectation,
  ) {}

  /** Makes the bike's next revision and the decision record that goes with it. */
  async create(scope: TeamScope, input: SetupInputDto): Promise<SetupDto> {
    return this.database.writeOnce(scope, async (transaction) => {
      const bike = await this.bikes.requireVisible(transaction, scope, input.bikeId);
      const { reason, trackId = null, testPlanId = null } = input;
      const figures = figuresOf(bike, input);
      const frozen = await this.expected(transaction, scope.teamId, bike, trackId, figures);
      const occasion = { reason, trackId, baselineId: null, testPlanId, ...frozen };
      return setupAnswer(await this.setups.revise(transaction, scope, bike, figures, occasion));
    });
  }

  /**
   * Takes a change back: a new revision equal to an earlier one, for the track that the change was for. The open
   * decision is marked as taken back.
   */
  async restore(scope: TeamScope, id: string, reason: string): Promise<SetupDto> {
    return this.database.writeOnce(scope, async (transaction) => {
      const { teamId } = scope;
      const earlier = await this.setups.requireVisible(transaction, scope, id);
      const bike = await this.bikes.require(transaction, teamId, earlier.bikeId);
      await this.blinding.refuseHidden(transaction, scope, bike.id);
      const current = await this.setups.latest(transaction, teamId, bike.id);
      if (!current || current.id === earlier.id) throw new NothingToRestore();
      const trackId = await this.decisions.trackOfSetup(transaction, teamId, current.id);
      const figures = figuresOfSetup(earlier);
      const frozen = await this.expected(transaction, teamId, bike, trackId, figures);
      const occasion = { reason, trackId, baselineId: null, ...frozen };
      return setupAnswer(await this.setups.revise(transaction, scope, bike, figures, occasion, 'taken back'));
    });
  }

  /**
   * What is expected on the track. Nothing without one, and nothing where the engine cannot compute the fill: what is
   * in the bike is in it, and is written down.
   */
  private async expected(
    transaction: Transaction,
    teamId: string,
    bike: Bike,
    trackId: string | null,
    figures: SetupFigures,
  ): Promise<Frozen | { readonly expected: null }> {
    if (trackId === null) return { expected: null };
    const records = await this.records.of(transaction, teamId, bike, trackId);
    try {
      return await this.expectation.of(transaction, teamId, records, figures);
    } catch (error) {
      if (error instanceof SpringInputError) return { expected: null };
      throw error;
    }
  }
}
