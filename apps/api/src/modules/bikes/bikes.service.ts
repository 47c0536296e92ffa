import { Injectable } from '@nestjs/common';
import { leverageFromTable } from '@loamledger/spring';
import {
  degreesFromRadian,
  metresFromMillimetres,
  millimetresFromMetres,
  radian,
  radianFromDegrees,
} from '@loamledger/units';
import { touchEvidence } from '../../platform/database/evidence-version.js';
import { newId } from '../../platform/database/new-id.js';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import { InvalidField, NotFound } from '../../platform/errors/refusal.js';
import { toPage, type Page, type PageQuery } from '../../platform/http/page.js';
import { visibleRider, type TeamScope } from '../../platform/http/scope.js';
import { RidersService } from '../riders/riders.service.js';
import { asking, type EngineFields } from '../spring-units/engine-refusal.js';
import { SpringUnitsService } from '../spring-units/spring-units.service.js';
import type { BikeEntity } from './bike.entity.js';
import type { BikeDto, BikeInputDto, BikeSourcesDto } from './bikes.dto.js';
import { BikesQueries } from './bikes.queries.js';

/** A bike as stored. */
export type Bike = Readonly<BikeEntity>;

const PER_CENT = 100;

@Injectable()
export class BikesService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: BikesQueries,
    private readonly riders: RidersService,
    private readonly units: SpringUnitsService,
  ) {}

  async list(scope: TeamScope, page: PageQuery): Promise<Page<BikeDto>> {
    const own = visibleRider(scope);
    const rows = await this.database.inTeam(scope, (transaction) =>
      this.queries.page(transaction, scope.teamId, page, own ? { riderId: own } : {}),
    );
    return toPage(rows, page.limit, answer);
  }

  async get(scope: TeamScope, id: string): Promise<BikeDto> {
    return this.database.inTeam(scope, async (transaction) =>
      answer(await this.requireVisible(transaction, scope, id)),
    );
  }

  async create(scope: TeamScope, input: BikeInputDto): Promise<BikeDto> {
    return this.database.writeOnce(scope, async (transaction) => {
      const columns = await this.checkedColumns(transaction, scope.teamId, input);
      return answer(
        await this.queries.insert(transaction, { teamId: scope.teamId, id: newId(), ...columns }),
      );
    });
  }

  async replace(scope: TeamScope, id: string, version: number, input: BikeInputDto): Promise<BikeDto> {
    return this.database.inTeam(scope, async (transaction) => {
      const columns = await this.checkedColumns(transaction, scope.teamId, input);
      await touchEvidence(transaction, scope.teamId);
      return answer(await this.queries.change(transaction, scope.teamId, id, version, columns));
    });
  }

  /** The stored bike, for features that compute with one. */
  require(transaction: Transaction, teamId: string, id: string): Promise<Bike> {
    return this.queries.require(transaction, teamId, id);
  }

  /** The stored bike if the member may see it. */
  async requireVisible(transaction: Transaction, scope: TeamScope, id: string): Promise<Bike> {
    const bike = await this.queries.require(transaction, scope.teamId, id);
    const own = visibleRider(scope);
    if (own && bike.riderId !== own) throw new NotFound('bike', id);
    return bike;
  }

  /** What belongs to a bike, if the member may see that; else it is not there, and nothing tells whose it is. */
  async requireOfVisible<Row extends { id: string; bikeId: string }>(
    transaction: Transaction,
    scope: TeamScope,
    thing: string,
    row: Row,
  ): Promise<Row> {
    const own = visibleRider(scope);
    if (!own) return row;
    const { riderId } = await this.queries.require(transaction, scope.teamId, row.bikeId);
    if (riderId !== own) throw new NotFound(thing, row.id);
    return row;
  }

  /** Bikes that the member may see. */
  async allVisible(transaction: Transaction, scope: TeamScope): Promise<readonly Bike[]> {
    const own = visibleRider(scope);
    return this.queries.all(transaction, scope.teamId, own ? { riderId: own } : {});
  }

  /** All bikes of the team, for features that compute with what was kept on them. */
  all(transaction: Transaction, teamId: string): Promise<readonly Bike[]> {
    return this.queries.all(transaction, teamId);
  }

  /** The filter of rows about the bikes that the member may see, but for `hidden` ones. */
  async visibleFilter(transaction: Transaction, scope: TeamScope, hidden: ReadonlySet<string>) {
    if (!visibleRider(scope)) return {};
    const own = await this.allVisible(transaction, scope);
    return this.queries.rowsAbout(own.map(({ id }) => id).filter((id) => !hidden.has(id)));
  }

  private async checkedColumns(transaction: Transaction, teamId: string, input: BikeInputDto) {
    await this.riders.require(transaction, teamId, input.riderId);
    const fork = await this.units.require(transaction, teamId, input.forkUnitId);
    if (fork.kind !== 'fork')
      throw new InvalidField('bike.not-a-fork', 'forkUnitId', input.forkUnitId, 'a fork');
    const shockUnitId = input.shockUnitId ?? null;
    const table = (input.leverageTable ?? []).map((row) => ({
      shockTravel: metresFromMillimetres(row.shockTravelMm),
      leverageRatio: row.leverageRatio,
    }));
    if (shockUnitId) {
      const shock = await this.units.require(transaction, teamId, shockUnitId);
      if (shock.kind !== 'shock')
        throw new InvalidField('bike.not-a-shock', 'shockUnitId', shockUnitId, 'a shock');
      refuseLeverageTable(table, shock.stroke);
    }
    return {
      name: input.name,
      riderId: input.riderId,
      category: input.category,
      mass: input.massKg,
      frontUnsprungMass: input.frontUnsprungMassKg,
      rearUnsprungMass: input.rearUnsprungMassKg,
      headAngle: radianFromDegrees(input.headAngleDeg),
      wheelbase: metresFromMillimetres(input.wheelbaseMm),
      frontWheelTravel: metresFromMillimetres(input.frontWheelTravelMm),
      rearWheelTravel: metresFromMillimetres(input.rearWheelTravelMm),
      frontLoadShare: input.frontLoadSharePct == null ? null : input.frontLoadSharePct / PER_CENT,
      centreOfMassHeight: metresOrNull(input.centreOfMassHeightMm),
      centreOfMassToRear: metresOrNull(input.centreOfMassToRearMm),
      leverageTable: shockUnitId ? table : null,
      sources: sourcesOf(input.sources ?? {}),
      forkUnitId: input.forkUnitId,
      shockUnitId,
    };
  }
}

const LEVERAGE_FIELDS: EngineFields = {
  'rows[].shockTravel': {
    field: 'leverageTable.#.shockTravelMm',
    unit: 'mm',
    fromSi: millimetresFromMetres,
  },
  'rows[].leverageRatio': { field: 'leverageTable.#.leverageRatio', unit: '', fromSi: (ratio) => ratio },
  'rows.length': { field: 'leverageTable', unit: 'rows', fromSi: (count) => count },
};

/**
 * The engine is the judge of a leverage table: it must rise from 0 to the stroke and never turn back.
 * @throws InvalidField
 */
export function refuseLeverageTable(table: NonNullable<BikeEntity['leverageTable']>, stroke: number): void {
  asking('bike.bad-leverage-table', LEVERAGE_FIELDS, () => leverageFromTable(table, stroke));
}

const metresOrNull = (value: number | null | undefined) =>
  value == null ? null : metresFromMillimetres(value);
const millimetresOrNull = (value: number | null) => (value === null ? null : millimetresFromMetres(value));

/** The stored name of each figure that may be assumed. */
export const SOURCE_COLUMNS = {
  massKg: 'mass',
  frontUnsprungMassKg: 'frontUnsprungMass',
  rearUnsprungMassKg: 'rearUnsprungMass',
  headAngleDeg: 'headAngle',
  frontLoadSharePct: 'frontLoadShare',
  leverageTable: 'leverageTable',
} as const satisfies Record<keyof BikeSourcesDto, keyof BikeEntity['sources']>;
const SOURCE_FIELDS = Object.keys(SOURCE_COLUMNS) as (keyof BikeSourcesDto)[];

const sourcesOf = (sources: BikeSourcesDto): BikeEntity['sources'] =>
  Object.fromEntries(
    SOURCE_FIELDS.filter((field) => sources[field]).map((field) => [SOURCE_COLUMNS[field], sources[field]]),
  );

export function answer(bike: Bike): BikeDto {
  return {
    id: bike.id,
    name: bike.name,
    riderId: bike.riderId,
    category: bike.category,
    massKg: bike.mass,
    frontUnsprungMassKg: bike.frontUnsprungMass,
    rearUnsprungMassKg: bike.rearUnsprungMass,
    headAngleDeg: degreesFromRadian(radian(bike.headAngle)),
    wheelbaseMm: millimetresFromMetres(bike.wheelbase),
    frontWheelTravelMm: millimetresFromMetres(bike.frontWheelTravel),
    rearWheelTravelMm: millimetresFromMetres(bike.rearWheelTravel),
    frontLoadSharePct: bike.frontLoadShare === null ? null : bike.frontLoadShare * PER_CENT,
    centreOfMassHeightMm: millimetresOrNull(bike.centreOfMassHeight),
    centreOfMassToRearMm: millimetresOrNull(bike.centreOfMassToRear),
    leverageTable: (bike.leverageTable ?? []).map((row) => ({
      shockTravelMm: millimetresFromMetres(row.shockTravel),
      leverageRatio: row.leverageRatio,
    })),
    forkUnitId: bike.forkUnitId,
    shockUnitId: bike.shockUnitId,
    sources: Object.fromEntries(
      SOURCE_FIELDS.map((field) => [field, bike.sources[SOURCE_COLUMNS[field]] ?? 'assumed']),
    ),
    version: bike.version,
  };
}
