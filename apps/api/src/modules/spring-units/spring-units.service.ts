import { Injectable } from '@nestjs/common';
import { gaugePascal, gaugePascalFromPsi, psiFromGaugePascal } from '@loamledger/units';
import { touchEvidence } from '../../platform/database/evidence-version.js';
import { newId } from '../../platform/database/new-id.js';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import { InvalidField } from '../../platform/errors/refusal.js';
import { toPage, type Page, type PageQuery } from '../../platform/http/page.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { SpacersService } from '../spacers/spacers.service.js';
import { refuseImpossibleUnit } from './engine-unit.js';
import type { SpringUnitEntity } from './spring-unit.entity.js';
import type { SpringUnitDto, SpringUnitInputDto } from './spring-units.dto.js';
import { SpringUnitsQueries } from './spring-units.queries.js';
import { figuresAnswer, parametersOf, sourcesAnswer, sourcesOf } from './unit-figures.js';

/** A spring unit as stored. */
export type SpringUnit = Readonly<SpringUnitEntity>;

@Injectable()
export class SpringUnitsService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: SpringUnitsQueries,
    private readonly spacers: SpacersService,
  ) {}

  async list(scope: TeamScope, page: PageQuery): Promise<Page<SpringUnitDto>> {
    return this.database.inTeam(scope, async (transaction) => {
      const rows = await this.queries.page(transaction, scope.teamId, page);
      const inStock = await this.spacers.inStock(transaction, scope.teamId);
      return toPage(rows, page.limit, (unit) => answer(unit, inStock(unit)));
    });
  }

  async get(scope: TeamScope, id: string): Promise<SpringUnitDto> {
    return this.database.inTeam(scope, async (transaction) =>
      this.withStock(transaction, await this.queries.require(transaction, scope.teamId, id)),
    );
  }

  async create(scope: TeamScope, input: SpringUnitInputDto): Promise<SpringUnitDto> {
    const columns = columnsOf(input);
    return this.database.writeOnce(scope, async (transaction) =>
      this.withStock(
        transaction,
        await this.queries.insert(transaction, { teamId: scope.teamId, id: newId(), ...columns }),
      ),
    );
  }

  async replace(
    scope: TeamScope,
    id: string,
    version: number,
    input: SpringUnitInputDto,
  ): Promise<SpringUnitDto> {
    const columns = columnsOf(input);
    return this.database.inTeam(scope, async (transaction) => {
      const before = await this.queries.require(transaction, scope.teamId, id);
      if (before.kind !== input.kind) {
        throw new InvalidField(
          'spring-unit.kind-fixed',
          'kind',
          input.kind,
          `'${before.kind}', as it was made`,
        );
      }
      await touchEvidence(transaction, scope.teamId);
      const unit = await this.queries.change(transaction, scope.teamId, id, version, columns);
      return this.withStock(transaction, unit);
    });
  }

  /** The stored unit, for features that compute with one. */
  require(transaction: Transaction, teamId: string, id: string): Promise<SpringUnit> {
    return this.queries.require(transaction, teamId, id);
  }

  all(transaction: Transaction, teamId: string): Promise<readonly SpringUnit[]> {
    return this.queries.all(transaction, teamId);
  }

  private async withStock(transaction: Transaction, unit: SpringUnitEntity): Promise<SpringUnitDto> {
    const inStock = await this.spacers.inStock(transaction, unit.teamId);
    return answer(unit, inStock(unit));
  }
}

function columnsOf(input: SpringUnitInputDto) {
  const { minPressurePsi = null, maxPressurePsi = null, maxSpacers = null } = input;
  refuseReversedLimits({ minPressurePsi, maxPressurePsi });
  const columns = {
    name: input.name,
    kind: input.kind,
    ...parametersOf(input),
    sources: sourcesOf(input.sources ?? {}),
    minPressure: minPressurePsi === null ? null : gaugePascalFromPsi(minPressurePsi),
    maxPressure: maxPressurePsi === null ? null : gaugePascalFromPsi(maxPressurePsi),
    maxSpacers,
  };
  refuseImpossibleUnit(columns);
  return columns;
}

/** @throws InvalidField where the least pressure is not below the most. */
export function refuseReversedLimits({
  minPressurePsi,
  maxPressurePsi,
}: Pick<SpringUnitDto, 'minPressurePsi' | 'maxPressurePsi'>): void {
  if (minPressurePsi !== null && maxPressurePsi !== null && minPressurePsi >= maxPressurePsi) {
    throw new InvalidField(
      'spring-unit.limits-reversed',
      'maxPressurePsi',
      maxPressurePsi,
      `above minPressurePsi, which is ${minPressurePsi} psi`,
    );
  }
}

/** A unit as a message, with how many spacers of its size lie in stock. */
export function answer(unit: SpringUnitEntity, spacersInStock: number): SpringUnitDto {
  return {
    id: unit.id,
    name: unit.name,
    ...figuresAnswer(unit),
    sources: sourcesAnswer(unit),
    minPressurePsi: psiOrNull(unit.minPressure),
    maxPressurePsi: psiOrNull(unit.maxPressure),
    maxSpacers: unit.maxSpacers,
    spacersInStock,
    version: unit.version,
  };
}

const psiOrNull = (pressure: number | null) =>
  pressure === null ? null : psiFromGaugePascal(gaugePascal(pressure));
