import { Injectable } from '@nestjs/common';
import { MoreThan } from 'typeorm';
import { readRows } from '../../platform/database/read-rows.js';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import { IdempotencyEntity } from '../../platform/database/idempotency.entity.js';
import type { ArchivedPerson } from './archive.js';
import { ARCHIVED_TABLES } from './archived-tables.js';
import { FormerMemberEntity } from './former-member.entity.js';
import { inOrder, tablePlan, type TablePlan } from './table-plan.js';

/** Rows read or written at once; a baseline has some ten thousand characters. */
const PAGE = 100;

@Injectable()
export class ArchiveQueries {
  private known: TablePlan[] | undefined;

  constructor(private readonly database: TeamDatabase) {}

  /** Every table of an archive, what is referred to first. Runs no statement. */
  plans(): readonly TablePlan[] {
    this.known ??= inOrder(
      ARCHIVED_TABLES.map((archived) => tablePlan(archived, this.database.shapeOf(archived.entity))),
    );
    return this.known;
  }

  /** All rows of a table, oldest first, a page at a time. */
  async *rows(transaction: Transaction, teamId: string, plan: TablePlan): AsyncGenerator<object[]> {
    for (let after: string | undefined; ;) {
      const page = await readRows<{ teamId: string; id: string }>(transaction, plan.archived.entity, {
        where: after === undefined ? { teamId } : { teamId, id: MoreThan(after) },
        order: { id: 'ASC' },
        take: PAGE,
      });
      yield page;
      after = page.at(-1)?.id;
      if (page.length < PAGE) return;
    }
  }

  async insertRows(transaction: Transaction, plan: TablePlan, rows: readonly object[]): Promise<void> {
    for (let start = 0; start < rows.length; start += PAGE) {
      await transaction.insert(plan.archived.entity, rows.slice(start, start + PAGE) as never);
    }
  }

  async team(transaction: Transaction, teamId: string): Promise<{ name: string; evidenceVersion: number }> {
    const rows: { name: string; evidenceVersion: number }[] = await transaction.query(
      'select name, evidence_version as "evidenceVersion" from team where id = $1',
      [teamId],
    );
    const [team] = rows;
    if (!team) throw new Error(`There is no team ${teamId}.`);
    return team;
  }

  /** Makes the team; false if it is there already, as after a repeated request. */
  async insertTeam(
    transaction: Transaction,
    team: { id: string; name: string; evidenceVersion: number },
  ): Promise<boolean> {
    const rows: unknown[] = await transaction.query(
      `insert into team (id, name, evidence_version) values ($1, $2, $3) on conflict do nothing returning id`,
      [team.id, team.name, team.evidenceVersion],
    );
    return rows.length > 0;
  }

  async insertOwner(
    transaction: Transaction,
    owner: { teamId: string; id: string; accountId: string; riderId: string | null },
  ): Promise<void> {
    await transaction.query(
      `insert into member (team_id, id, account_id, role, rider_id) values ($1, $2, $3, 'mechanic', $4)`,
      [owner.teamId, owner.id, owner.accountId, owner.riderId],
    );
  }

  async insertFormerMembers(
    transaction: Transaction,
    people: readonly Omit<FormerMemberEntity, 'createdAt'>[],
  ): Promise<void> {
    if (people.length > 0) await transaction.insert(FormerMemberEntity, [...people]);
  }

  /** Who is in the team, and who was where an archive of it was made. */
  people(transaction: Transaction, teamId: string): Promise<ArchivedPerson[]> {
    return transaction.query(
      `select account.id, account.display_name as "displayName", account.email, member.role,
              member.rider_id as "riderId"
       from member join account on account.id = member.account_id where member.team_id = $1
       union all
       select id, display_name, email, role, rider_id from former_member where team_id = $1
       order by 1`,
      [teamId],
    );
  }

  async emailOf(transaction: Transaction, accountId: string): Promise<string> {
    const rows: { email: string }[] = await transaction.query('select email from account where id = $1', [
      accountId,
    ]);
    return rows[0]?.email ?? '';
  }

  async keepAnswer(
    transaction: Transaction,
    write: { teamId: string; accountId: string; key: string; fingerprint: string },
    answer: object,
  ): Promise<void> {
    await transaction.insert(IdempotencyEntity, { ...write, answer } as never);
  }

  /** What the same request was answered before; null where the key made something else. */
  async keptAnswer(
    transaction: Transaction,
    write: { teamId: string; accountId: string; key: string },
  ): Promise<{ fingerprint: string; answer: object | null } | null> {
    return transaction.findOneBy(IdempotencyEntity, write);
  }
}
