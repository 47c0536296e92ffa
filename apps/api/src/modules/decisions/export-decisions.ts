import { Injectable } from '@nestjs/common';
import { writeTable } from '../../platform/csv/write-table.js';
import { TeamDatabase } from '../../platform/database/team-database.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { BikesService } from '../bikes/bikes.service.js';
import { RidersService } from '../riders/riders.service.js';
import { TracksService } from '../tracks/tracks.service.js';
import { DECISION_COLUMNS } from './decision-columns.js';
import type { DecisionDto, DecisionFilter } from './decisions.dto.js';
import { DecisionsService } from './decisions.service.js';

/** Writes decision records for use elsewhere. */
@Injectable()
export class ExportDecisions {
  constructor(
    private readonly database: TeamDatabase,
    private readonly decisions: DecisionsService,
    private readonly bikes: BikesService,
    private readonly riders: RidersService,
    private readonly tracks: TracksService,
  ) {}

  async csv(scope: TeamScope, filter: DecisionFilter): Promise<string> {
    return this.database.inTeam(scope, async (transaction) => {
      const decisions = await this.decisions.all(transaction, scope, filter);
      const names = new Map(
        [
          ...(await this.bikes.allVisible(transaction, scope)),
          ...(await this.riders.all(transaction, scope.teamId)),
          ...(await this.tracks.all(transaction, scope.teamId)),
        ].map(({ id, name }) => [id, name]),
      );
      const nameOf = (id: string | null) => (id === null ? null : (names.get(id) ?? null));
      return writeTable(
        DECISION_COLUMNS.map(({ name }) => name),
        decisions.map((decision) => DECISION_COLUMNS.map(({ cell }) => cell(decision, nameOf))),
      );
    });
  }

  json(scope: TeamScope, filter: DecisionFilter): Promise<DecisionDto[]> {
    return this.database.inTeam(scope, (transaction) => this.decisions.all(transaction, scope, filter));
  }
}
