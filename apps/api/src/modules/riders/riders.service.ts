import { Injectable } from '@nestjs/common';
import { touchEvidence } from '../../platform/database/evidence-version.js';
import { newId } from '../../platform/database/new-id.js';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import { NotFound } from '../../platform/errors/refusal.js';
import { toPage, type Page, type PageQuery } from '../../platform/http/page.js';
import { visibleRider, type TeamScope } from '../../platform/http/scope.js';
import type { RiderEntity } from './rider.entity.js';
import type { EndWishDto, RiderDto, RiderInputDto } from './riders.dto.js';
import { SagBandReversed } from './riders.errors.js';
import { RidersQueries } from './riders.queries.js';
import { USUAL_WISHES } from './usual-wishes.js';

/** A rider as stored. */
export type Rider = Readonly<RiderEntity>;

const PER_CENT = 100;

@Injectable()
export class RidersService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: RidersQueries,
  ) {}

  async list(scope: TeamScope, page: PageQuery): Promise<Page<RiderDto>> {
    const own = visibleRider(scope);
    const rows = await this.database.inTeam(scope, (transaction) =>
      this.queries.page(transaction, scope.teamId, page, own ? { id: own } : {}),
    );
    return toPage(rows, page.limit, answer);
  }

  async get(scope: TeamScope, id: string): Promise<RiderDto> {
    const own = visibleRider(scope);
    if (own && own !== id) throw new NotFound('rider', id);
    return this.database.inTeam(scope, async (transaction) =>
      answer(await this.queries.require(transaction, scope.teamId, id)),
    );
  }

  async create(scope: TeamScope, input: RiderInputDto): Promise<RiderDto> {
    const columns = columnsOf(input);
    return this.database.writeOnce(scope, async (transaction) =>
      answer(await this.queries.insert(transaction, { teamId: scope.teamId, id: newId(), ...columns })),
    );
  }

  async replace(scope: TeamScope, id: string, version: number, input: RiderInputDto): Promise<RiderDto> {
    const columns = columnsOf(input);
    return this.database.inTeam(scope, async (transaction) => {
      await touchEvidence(transaction, scope.teamId);
      return answer(await this.queries.change(transaction, scope.teamId, id, version, columns));
    });
  }

  /** The stored rider, for features that compute with one. */
  require(transaction: Transaction, teamId: string, id: string): Promise<Rider> {
    return this.queries.require(transaction, teamId, id);
  }

  /** All riders of the team. */
  all(transaction: Transaction, teamId: string): Promise<readonly Rider[]> {
    return this.queries.all(transaction, teamId);
  }
}

function columnsOf(input: RiderInputDto) {
  const fork = checkedBand('fork', input.fork ?? USUAL_WISHES.fork);
  const shock = checkedBand('shock', input.shock ?? USUAL_WISHES.shock);
  return {
    name: input.name,
    readyMass: input.readyMassKg,
    readyMassSource: input.readyMassSource ?? ('entered' as const),
    acceptedRisk: (input.acceptedRiskPct ?? USUAL_WISHES.acceptedRiskPct) / PER_CENT,
    forkSagLow: fork.sagLowPct / PER_CENT,
    forkSagHigh: fork.sagHighPct / PER_CENT,
    forkReserve: fork.reservePct / PER_CENT,
    shockSagLow: shock.sagLowPct / PER_CENT,
    shockSagHigh: shock.sagHighPct / PER_CENT,
    shockReserve: shock.reservePct / PER_CENT,
  };
}

export function checkedBand(end: string, wish: Readonly<EndWishDto>): Readonly<EndWishDto> {
  if (wish.sagHighPct <= wish.sagLowPct) throw new SagBandReversed(end, wish.sagLowPct, wish.sagHighPct);
  return wish;
}

export function answer(rider: RiderEntity): RiderDto {
  return {
    id: rider.id,
    name: rider.name,
    readyMassKg: rider.readyMass,
    readyMassSource: rider.readyMassSource,
    acceptedRiskPct: rider.acceptedRisk * PER_CENT,
    fork: {
      sagLowPct: rider.forkSagLow * PER_CENT,
      sagHighPct: rider.forkSagHigh * PER_CENT,
      reservePct: rider.forkReserve * PER_CENT,
    },
    shock: {
      sagLowPct: rider.shockSagLow * PER_CENT,
      sagHighPct: rider.shockSagHigh * PER_CENT,
      reservePct: rider.shockReserve * PER_CENT,
    },
    version: rider.version,
  };
}
