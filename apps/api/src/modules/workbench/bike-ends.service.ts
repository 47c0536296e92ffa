import { ENGINE_VERSION } from '@loamledger/spring';
import { Injectable } from '@nestjs/common';
import { TeamDatabase } from '../../platform/database/team-database.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { DemandService } from '../demand/demand.service.js';
import { brakingOf } from './bike-braking.js';
import { unitAt } from './bike-end.js';
import { BikeRecordsReader, versionOf } from './bike-records.js';
import { bikeEndAnswer } from './end-answer.js';
import type { BikeEndsDto } from './ends.dto.js';

/** Tells the ends of a bike with everything that is needed to try changes at them. */
@Injectable()
export class BikeEndsService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly records: BikeRecordsReader,
    private readonly demand: DemandService,
  ) {}

  async ends(scope: TeamScope, bikeId: string, trackId: string | null): Promise<BikeEndsDto> {
    return this.database.inTeam(scope, async (transaction) => {
      const records = await this.records.read(transaction, scope, bikeId, trackId);
      const { bike, rider, setup, track, fork } = records;
      const shock = unitAt('shock', records);
      const demandOf = async (end: 'fork' | 'shock') =>
        track ? await this.demand.demand(transaction, scope.teamId, end) : null;
      const evidenceVersion = track ? await this.demand.evidenceVersion(transaction, scope.teamId) : 0;
      return {
        bikeId: bike.id,
        riderId: rider.id,
        setupId: setup?.id ?? null,
        trackId,
        fork: bikeEndAnswer('fork', fork, records, await demandOf('fork')),
        shock: shock && bikeEndAnswer('shock', shock, records, await demandOf('shock')),
        braking: brakingOf(bike, rider),
        engineVersion: ENGINE_VERSION,
        version: versionOf(records, evidenceVersion),
      };
    });
  }
}
