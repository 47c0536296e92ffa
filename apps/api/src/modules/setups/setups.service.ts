import { Injectable } from '@nestjs/common';
import {
  celsiusFromKelvin,
  gaugePascal,
  gaugePascalFromPsi,
  kelvin,
  kelvinFromCelsius,
  psiFromGaugePascal,
} from '@loamledger/units';
import { newId } from '../../platform/database/new-id.js';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import { toPage, type Page } from '../../platform/http/page.js';
import { visibleRider, type TeamScope } from '../../platform/http/scope.js';
import { BikesService, type Bike } from '../bikes/bikes.service.js';
import { DecisionsService, type Change } from '../decisions/decisions.service.js';
import { SpringUnitsService } from '../spring-units/spring-units.service.js';
import { TracksService } from '../tracks/tracks.service.js';
import type { SetupEntity } from './setup.entity.js';
import { refuseFillOutsideLimits } from './setup-limits.js';
import type { EndSetupDto, EndSetupInputDto, SetupDto, SetupInputDto, SetupListQuery } from './setups.dto.js';
import { FilledHalfKnown, NothingToRestore, ShockMismatch } from './setups.errors.js';
import { SetupsQueries } from './setups.queries.js';

/** A set-up as stored. */
export type Setup = Readonly<SetupEntity>;

/** The columns of a set-up that a person decides. */
export type SetupFigures = Omit<
  SetupEntity,
  'teamId' | 'id' | 'createdAt' | 'bikeId' | 'revision' | 'previousId' | 'createdBy'
>;

/** Why a revision is made, and what was computed about it. */
export type Occasion = Pick<Change, 'reason' | 'trackId' | 'baselineId' | 'expected'>;

@Injectable()
export class SetupsService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: SetupsQueries,
    private readonly bikes: BikesService,
    private readonly units: SpringUnitsService,
    private readonly tracks: TracksService,
    private readonly decisions: DecisionsService,
  ) {}

  async list(scope: TeamScope, query: SetupListQuery): Promise<Page<SetupDto>> {
    return this.database.inTeam(scope, async (transaction) => {
      const filter = await this.visibleBikes(transaction, scope, query.bikeId);
      return toPage(await this.queries.page(transaction, scope.teamId, query, filter), query.limit, answer);
    });
  }

  async get(scope: TeamScope, id: string): Promise<SetupDto> {
    return this.database.inTeam(scope, async (transaction) => {
      const setup = await this.queries.require(transaction, scope.teamId, id);
      await this.bikes.requireVisible(transaction, scope, setup.bikeId);
      return answer(setup);
    });
  }

  /** Makes the bike's next revision and the decision record that goes with it. */
  async create(scope: TeamScope, input: SetupInputDto): Promise<SetupDto> {
    return this.database.writeOnce(scope, async (transaction) => {
      const bike = await this.bikes.requireVisible(transaction, scope, input.bikeId);
      const trackId = input.trackId ?? null;
      if (trackId) await this.tracks.require(transaction, scope.teamId, trackId);
      const figures = figuresOf(bike, input);
      const occasion = { reason: input.reason, trackId, baselineId: null, expected: null };
      return answer(await this.revise(transaction, scope, bike, figures, occasion));
    });
  }

  /** Takes a change back: a new revision equal to an earlier one. The open decision is marked as taken back. */
  async restore(scope: TeamScope, id: string, reason: string): Promise<SetupDto> {
    return this.database.writeOnce(scope, async (transaction) => {
      const earlier = await this.queries.require(transaction, scope.teamId, id);
      const bike = await this.bikes.requireVisible(transaction, scope, earlier.bikeId);
      const current = await this.queries.latest(transaction, scope.teamId, bike.id);
      if (current?.id === earlier.id) throw new NothingToRestore();
      const occasion = { reason, trackId: null, baselineId: null, expected: null };
      return answer(
        await this.revise(transaction, scope, bike, figuresOfSetup(earlier), occasion, 'taken back'),
      );
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
    await this.queries.lockBike(transaction, scope.teamId, bike.id);
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
    const change = { bikeId: bike.id, fromSetupId: previous?.id ?? null, toSetupId: setup.id, ...occasion };
    await this.decisions.record(transaction, scope, change, earlierBecomes);
    return setup;
  }

  require(transaction: Transaction, teamId: string, id: string): Promise<Setup> {
    return this.queries.require(transaction, teamId, id);
  }

  latest(transaction: Transaction, teamId: string, bikeId: string): Promise<Setup | null> {
    return this.queries.latest(transaction, teamId, bikeId);
  }

  latestOfAll(transaction: Transaction, teamId: string): Promise<readonly Setup[]> {
    return this.queries.latestOfAll(transaction, teamId);
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

  private async visibleBikes(transaction: Transaction, scope: TeamScope, bikeId: string | undefined) {
    if (bikeId) {
      await this.bikes.requireVisible(transaction, scope, bikeId);
      return { bikeId };
    }
    if (!visibleRider(scope)) return {};
    const own = await this.bikes.allVisible(transaction, scope);
    return this.queries.ofBikes(own.map(({ id }) => id));
  }
}

/** A message's figures as columns, for the units that are in the bike now. */
export function figuresOf(
  bike: Bike,
  input: Pick<SetupInputDto, 'fork' | 'shock' | 'filledAltitudeM' | 'filledTemperatureC' | 'note'>,
): SetupFigures {
  const shock = input.shock ?? null;
  if ((bike.shockUnitId === null) !== (shock === null))
    throw new ShockMismatch(bike.shockUnitId !== null, shock);
  const { filledAltitudeM: altitude = null, filledTemperatureC: temperature = null } = input;
  if ((altitude === null) !== (temperature === null)) throw new FilledHalfKnown(temperature);
  return {
    forkUnitId: bike.forkUnitId,
    forkPressure: gaugePascalFromPsi(input.fork.pressurePsi),
    forkSpacers: input.fork.spacers,
    forkRebound: input.fork.reboundClicks ?? null,
    forkCompression: input.fork.compressionClicks ?? null,
    shockUnitId: bike.shockUnitId,
    shockPressure: shock && gaugePascalFromPsi(shock.pressurePsi),
    shockSpacers: shock && shock.spacers,
    shockRebound: shock?.reboundClicks ?? null,
    shockCompression: shock?.compressionClicks ?? null,
    filledAltitude: altitude,
    filledTemperature: temperature === null ? null : kelvinFromCelsius(temperature),
    note: input.note ?? '',
  };
}

function figuresOfSetup(setup: Setup): SetupFigures {
  const {
    teamId: _t,
    id: _i,
    createdAt: _c,
    bikeId: _b,
    revision: _r,
    previousId: _p,
    createdBy: _by,
    ...figures
  } = setup;
  return figures;
}

export function answer(setup: Setup): SetupDto {
  return {
    id: setup.id,
    bikeId: setup.bikeId,
    revision: setup.revision,
    previousId: setup.previousId,
    fork: endAnswer(
      setup.forkUnitId,
      setup.forkPressure,
      setup.forkSpacers,
      setup.forkRebound,
      setup.forkCompression,
    ),
    shock:
      setup.shockUnitId === null || setup.shockPressure === null
        ? null
        : endAnswer(
            setup.shockUnitId,
            setup.shockPressure,
            setup.shockSpacers ?? 0,
            setup.shockRebound,
            setup.shockCompression,
          ),
    filledAltitudeM: setup.filledAltitude,
    filledTemperatureC:
      setup.filledTemperature === null ? null : celsiusFromKelvin(kelvin(setup.filledTemperature)),
    note: setup.note,
    createdAt: setup.createdAt.toISOString(),
    createdBy: setup.createdBy,
  };
}

const endAnswer = (
  unitId: string,
  pressure: number,
  spacers: number,
  reboundClicks: number | null,
  compressionClicks: number | null,
): EndSetupDto & EndSetupInputDto => ({
  unitId,
  pressurePsi: psiFromGaugePascal(gaugePascal(pressure)),
  spacers,
  reboundClicks,
  compressionClicks,
});
