import { Injectable } from '@nestjs/common';
import { TeamDatabase, type Transaction } from '../../../platform/database/team-database.js';
import type { TeamScope } from '../../../platform/http/scope.js';
import { LogRun } from '../log-run.js';
import { RunsQueries } from '../runs.queries.js';
import { CsvRefused } from './csv.errors.js';
import { importAnswer, previewAnswer, type ImportOutcome } from './import-answer.js';
import type { ImportDto, ImportPreviewDto } from './import.dto.js';
import { OpenImport } from './open-import.js';
import { readTable } from './read-table.js';

/** Takes a notebook of runs: everything in it, through the same services as runs logged one by one, or nothing. */
@Injectable()
export class ImportRuns {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: RunsQueries,
    private readonly imports: OpenImport,
    private readonly logRun: LogRun,
  ) {}

  /** What a file would store, and everything that is wrong with it; stores nothing. */
  async preview(scope: TeamScope, csv: string): Promise<ImportPreviewDto> {
    try {
      return await this.database.inTeam(scope, async (transaction) => {
        throw new RollBack(await this.take(transaction, scope, csv));
      });
    } catch (error) {
      if (error instanceof RollBack) return previewAnswer(error.outcome);
      throw error;
    }
  }

  /** Stores every run of the file. @throws CsvRefused when one line has a problem: then nothing is stored. */
  async commit(scope: TeamScope, csv: string): Promise<ImportDto> {
    return this.database.writeOnce(scope, async (transaction) => {
      const outcome = await this.take(transaction, scope, csv);
      if (outcome.problems.length > 0) throw new CsvRefused(outcome.problems);
      await this.logRun.logMany(transaction, scope, outcome.runs);
      return importAnswer(outcome);
    });
  }

  private async take(transaction: Transaction, scope: TeamScope, csv: string): Promise<ImportOutcome> {
    const table = readTable(csv);
    // Two files at once would wait for each other's bikes and sessions in opposite orders.
    await this.queries.lockImports(transaction, scope.teamId);
    const file = await this.imports.open(transaction, scope);
    for (const row of table.rows) await file.take(row);
    return {
      runs: file.runs,
      newSessions: file.sessions.opened,
      newSetups: file.setups.made,
      problems: [...table.problems, ...file.problems].toSorted((a, b) => a.line - b.line),
    };
  }
}

/** Ends a preview's transaction without storing, and carries the outcome out of it. */
class RollBack extends Error {
  constructor(readonly outcome: ImportOutcome) {
    super('Nothing of a preview is stored.');
  }
}
