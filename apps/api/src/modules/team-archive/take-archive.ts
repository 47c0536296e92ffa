import { createHash } from 'node:crypto';
import { SpringInputError } from '@loamledger/spring';
import { Injectable } from '@nestjs/common';
import { v5 } from 'uuid';
import { Breaks } from '../../platform/compute/breaks.js';
import { IdempotencyConflict } from '../../platform/database/idempotency-conflict.js';
import { newId } from '../../platform/database/new-id.js';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import { Turns } from '../../platform/http/turns.js';
import { HitHeights } from '../runs/hit-heights.js';
import { ArchiveQueries } from './archive.queries.js';
import type { ArchivedPerson, ArchivedRow, TeamArchive } from './archive.js';
import type { ImportedTeamDto } from './imported-team.dto.js';
import { mapTexts } from './map-texts.js';
import { asStored, readArchive } from './read-archive.js';
import type { TablePlan } from './table-plan.js';
import { ArchiveRefused } from './team-archive.errors.js';

/** Whose turn it is where all wait in one line. */
const ANYBODY = '';

/** Makes a new team of an archive: all of it, or nothing. */
@Injectable()
export class TakeArchive {
  /** Parsed, an archive takes many times the room of its text: one at a time is, and few wait, as room for files is scarce. */
  private readonly turns = new Turns(1, Infinity);

  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: ArchiveQueries,
    private readonly hitHeights: HitHeights,
  ) {}

  /**
   * @param idempotencyKey names the new team, so that a repeated request finds the first one's.
   * @throws NotAnArchive or ArchiveRefused; IdempotencyConflict when the key was used for another request.
   */
  async take(accountId: string, text: string, idempotencyKey?: string): Promise<ImportedTeamDto> {
    const turn = this.turns.begin(ANYBODY);
    if (turn instanceof Promise) await turn;
    try {
      return await this.takeNow(accountId, text, idempotencyKey);
    } finally {
      this.turns.end(ANYBODY);
    }
  }

  private async takeNow(accountId: string, text: string, idempotencyKey?: string): Promise<ImportedTeamDto> {
    const teamId = idempotencyKey ? v5(idempotencyKey, accountId) : newId();
    const fingerprint = createHash('sha256').update(text).digest('hex');
    const plans = this.queries.plans();
    // Before the transaction: a large archive takes long to check, and no connection waits for it.
    const archive = await readArchive(text, plans);
    return this.database.inTeam({ teamId, accountId }, async (transaction) => {
      if (!(await this.queries.insertTeam(transaction, { id: teamId, ...archive.team }))) {
        return this.earlier(transaction, { teamId, accountId, key: idempotencyKey ?? '' }, fingerprint);
      }
      const answer = await this.fill(transaction, { teamId, accountId }, archive, plans);
      if (idempotencyKey) {
        const write = { teamId, accountId, key: idempotencyKey, fingerprint };
        await this.queries.keepAnswer(transaction, write, answer);
      }
      return answer;
    });
  }

  private async earlier(
    transaction: Transaction,
    write: { teamId: string; accountId: string; key: string },
    fingerprint: string,
  ): Promise<ImportedTeamDto> {
    const kept = await this.queries.keptAnswer(transaction, write);
    if (kept?.fingerprint !== fingerprint) throw new IdempotencyConflict(write.key);
    return kept.answer as ImportedTeamDto;
  }

  private async fill(
    transaction: Transaction,
    { teamId, accountId }: { teamId: string; accountId: string },
    archive: TeamArchive,
    plans: readonly TablePlan[],
  ): Promise<ImportedTeamDto> {
    const email = await this.queries.emailOf(transaction, accountId);
    const owner = archive.people.find((person) => person.email === email);
    const ids = newIds(archive, plans);
    if (owner) ids.set(owner.id, accountId);
    const others = archive.people.filter((person) => person !== owner && person.displayName !== null);
    const breaks = new Breaks();
    const idOf = (id: string | null) => (id === null ? null : (ids.get(id) ?? null));

    for (const plan of plans) {
      const rows: object[] = [];
      for (const row of archive.records[plan.name] ?? []) {
        if (breaks.isDue) await breaks.take();
        const renamed = mapTexts(row, (value) => ids.get(value) ?? value) as ArchivedRow;
        rows.push({ ...plan.archived.derived, ...asStored(plan, renamed), teamId });
      }
      await this.queries.insertRows(transaction, plan, rows);
    }
    const place = { teamId, id: newId(), accountId, riderId: idOf(owner?.riderId ?? null) };
    await this.queries.insertOwner(transaction, place);
    await this.queries.insertFormerMembers(
      transaction,
      others.map((person) => formerMember(teamId, person, idOf)),
    );
    await this.findHits(transaction, teamId);
    return {
      id: teamId,
      name: archive.team.name,
      records: plans.map(({ name }) => ({ table: name, rows: archive.records[name]?.length ?? 0 })),
      people: others.flatMap(({ displayName, role }) => (displayName ? [{ displayName, role }] : [])),
    };
  }

  /** Finds the hit height behind every ring reading. @throws ArchiveRefused for figures that no spring can have. */
  private async findHits(transaction: Transaction, teamId: string): Promise<void> {
    try {
      await this.hitHeights.refresh(transaction, teamId);
    } catch (error) {
      if (!(error instanceof SpringInputError)) throw error;
      throw new ArchiveRefused([
        { field: `records.ring_reading: ${error.argument}`, given: null, allowed: error.allowed },
      ]);
    }
  }
}

/** A new id for everything in the archive. They sort as the old ones do, which is in the order of making. */
function newIds({ people, records }: TeamArchive, plans: readonly TablePlan[]): Map<string, string> {
  const old = plans.flatMap(({ name }) => (records[name] ?? []).map(({ id }) => id));
  return new Map([...old, ...people.map(({ id }) => id)].toSorted().map((id) => [id, newId()]));
}

const formerMember = (
  teamId: string,
  { id, displayName, email, role, riderId }: ArchivedPerson,
  idOf: (id: string | null) => string | null,
) => ({
  teamId,
  id: idOf(id) ?? newId(),
  displayName: displayName ?? '',
  email,
  role,
  riderId: idOf(riderId),
});
