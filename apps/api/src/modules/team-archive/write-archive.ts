import { Injectable } from '@nestjs/common';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { ArchiveQueries } from './archive.queries.js';
import { FORMAT, VERSION, type ArchivedPerson } from './archive.js';
import type { TablePlan } from './table-plan.js';

/** Writes a whole team down as one document. */
@Injectable()
export class WriteArchive {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: ArchiveQueries,
  ) {}

  /**
   * The document in pieces, of one moment: what is written meanwhile is in it whole or not at all. It is put together
   * before the first piece is sent, as somebody who reads slowly must not hold a connection to the database.
   */
  async pieces(scope: TeamScope): Promise<Buffer[]> {
    return this.database.snapshotOfTeam(scope, async (transaction) => {
      const { name, evidenceVersion } = await this.queries.team(transaction, scope.teamId);
      const named = new Set<string>();
      const tables: Buffer[] = [];
      for (const plan of this.queries.plans()) {
        tables.push(...(await this.table(transaction, scope.teamId, plan, named)));
      }
      const people = await this.people(transaction, scope.teamId, named);
      const head = {
        format: FORMAT,
        version: VERSION,
        exportedAt: new Date().toISOString(),
        team: { name, evidenceVersion },
        people,
      };
      return [
        Buffer.from(`${JSON.stringify(head).slice(0, -1)},"records":{`),
        ...tables,
        Buffer.from('}}\n'),
      ];
    });
  }

  private async table(
    transaction: Transaction,
    teamId: string,
    plan: TablePlan,
    named: Set<string>,
  ): Promise<Buffer[]> {
    const isFirstTable = plan === this.queries.plans()[0];
    // As bytes, which the texts that they are made of need not outlive.
    const pieces = [Buffer.from(`${isFirstTable ? '' : ','}\n"${plan.name}":[`)];
    for await (const page of this.queries.rows(transaction, teamId, plan)) {
      const rows = page as Record<string, unknown>[];
      for (const column of plan.archived.people) {
        for (const row of rows) if (row[column] !== null) named.add(row[column] as string);
      }
      const comma = pieces.length > 1 ? ',\n' : '';
      if (rows.length > 0)
        pieces.push(Buffer.from(comma + rows.map((row) => JSON.stringify(carried(plan, row))).join(',\n')));
    }
    return [...pieces, Buffer.from(']')];
  }

  /** The team's people, then those whom records name and who have left: by their ids alone. */
  private async people(
    transaction: Transaction,
    teamId: string,
    named: ReadonlySet<string>,
  ): Promise<ArchivedPerson[]> {
    const people = await this.queries.people(transaction, teamId);
    const known = new Set(people.map(({ id }) => id));
    const left = [...named].filter((id) => !known.has(id)).toSorted();
    const nothing = { displayName: null, email: null, role: null, riderId: null };
    return [...people, ...left.map((id) => ({ id, ...nothing }))];
  }
}

/** Dates become RFC 3339 by themselves. */
const carried = (plan: TablePlan, row: Readonly<Record<string, unknown>>): object =>
  Object.fromEntries(Object.keys(plan.checks).map((property) => [property, row[property]]));
