import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../../platform/database/team-database.js';
import type { TeamScope } from '../../../platform/http/scope.js';
import { SessionsService } from '../../sessions/sessions.service.js';
import { SetupsService } from '../../setups/setups.service.js';
import { LogRun } from '../log-run.js';
import { RunRecordsReader } from '../run-records.js';
import { CsvImport } from './csv-import.js';
import { LineSessions } from './line-sessions.js';
import { LineSetups } from './line-setups.js';
import { TeamNames } from './team-names.js';

/** Makes the import of one file ready: names read once, sessions and set-ups found or made as its lines ask. */
@Injectable()
export class OpenImport {
  constructor(
    private readonly names: TeamNames,
    private readonly records: RunRecordsReader,
    private readonly sessions: SessionsService,
    private readonly setups: SetupsService,
    private readonly logRun: LogRun,
  ) {}

  async open(transaction: Transaction, scope: TeamScope): Promise<CsvImport> {
    const books = await this.names.books(transaction, scope);
    const recordsOf = this.records.within(transaction, scope.teamId);
    return new CsvImport(
      books,
      new LineSessions(this.sessions, transaction, scope.teamId),
      new LineSetups(this.setups, transaction, scope),
      ({ run, bike }, session, setup) =>
        recordsOf({
          sessionId: session.id,
          setupId: setup.id,
          bikeId: bike.id,
          riderId: run.riderId ?? bike.riderId,
        }),
      (input, records) => this.logRun.check(input, records),
    );
  }
}
