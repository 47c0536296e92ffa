import { Injectable } from '@nestjs/common';
import { newId } from '../../platform/database/new-id.js';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import { toPage, type Page, type PageQuery } from '../../platform/http/page.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { SpringUnitsService } from '../spring-units/spring-units.service.js';
import type { ServiceEntryEntity } from './service-entry.entity.js';
import { entryAnswer, refuseHoursOfNothing, secondsOf, unitServiceAnswer } from './service-standing.js';
import type {
  ServiceEntryDto,
  ServiceEntryInputDto,
  UnitCareInputDto,
  UnitServiceDto,
} from './unit-service.dto.js';
import { AlreadyTakenBack, DayToCome } from './unit-service.errors.js';
import { UnitServiceQueries } from './unit-service.queries.js';

/** The earliest time zone is so far ahead of ours, ms. */
const AHEAD_MS = 14 * 3_600_000;

/** When a unit was serviced, and how much it was ridden since. */
@Injectable()
export class UnitServiceService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: UnitServiceQueries,
    private readonly units: SpringUnitsService,
  ) {}

  async get(scope: TeamScope, unitId: string): Promise<UnitServiceDto> {
    return this.database.inTeam(scope, (transaction) => this.read(transaction, scope.teamId, unitId));
  }

  async entries(scope: TeamScope, unitId: string, page: PageQuery): Promise<Page<ServiceEntryDto>> {
    const { teamId } = scope;
    return this.database.inTeam(scope, async (transaction) => {
      await this.units.require(transaction, teamId, unitId);
      const rows = await this.queries.page(transaction, teamId, page, { unitId });
      const ids = rows.map(({ id }) => id);
      const takenBack = await this.queries.takenBack(transaction, teamId, ids);
      return toPage(rows, page.limit, (row) => entryAnswer(row, takenBack.has(row.id)));
    });
  }

  async enterCare(scope: TeamScope, unitId: string, input: UnitCareInputDto): Promise<UnitServiceDto> {
    const { teamId, accountId } = scope;
    const { serviceIntervalHours = null, capTorqueNm = null } = input;
    return this.database.writeOnce(scope, async (transaction) => {
      await this.units.require(transaction, teamId, unitId);
      await this.queries.insertCare(transaction, {
        teamId,
        id: newId(),
        unitId,
        serviceInterval: serviceIntervalHours === null ? null : secondsOf(serviceIntervalHours),
        capTorque: capTorqueNm,
        enteredBy: accountId,
      });
      return this.answerOf(transaction, teamId, unitId);
    });
  }

  /** @throws NotFound, DayToCome, HoursOfNothing */
  async enter(scope: TeamScope, unitId: string, input: ServiceEntryInputDto): Promise<ServiceEntryDto> {
    const { kind, day, ridingHours = null, doneBy, note = '' } = input;
    if (day > new Date(Date.now() + AHEAD_MS).toISOString().slice(0, day.length)) throw new DayToCome(day);
    refuseHoursOfNothing({ kind, ridingHours });
    const riding = ridingHours === null ? null : secondsOf(ridingHours);
    return this.database.writeOnce(scope, async (transaction) => {
      await this.units.require(transaction, scope.teamId, unitId);
      const entry = { unitId, kind, day, riding, doneBy, note, takesBackId: null };
      return entryAnswer(await this.insert(transaction, scope, entry), false);
    });
  }

  /** Takes an entry back, by an entry of its own: both stay. @throws NotFound, AlreadyTakenBack */
  async takeBack(scope: TeamScope, id: string, note: string): Promise<ServiceEntryDto> {
    const { teamId } = scope;
    return this.database.writeOnce(scope, async (transaction) => {
      const { unitId, kind, day, riding, doneBy, takesBackId } = await this.queries.require(
        transaction,
        teamId,
        id,
      );
      await this.queries.lockUnit(transaction, teamId, unitId);
      const takenBack = await this.queries.takenBack(transaction, teamId, [id]);
      if (takesBackId !== null || takenBack.size > 0) throw new AlreadyTakenBack();
      const entry = { unitId, kind, day, riding, doneBy, note, takesBackId: id };
      return entryAnswer(await this.insert(transaction, scope, entry), false);
    });
  }

  /** The torque of the air cap of every unit for which the team has entered one, N·m, by unit. */
  async capTorques(transaction: Transaction, teamId: string): Promise<ReadonlyMap<string, number>> {
    const care = await this.queries.care(transaction, teamId, null);
    return new Map(
      care.flatMap(({ unitId, capTorque }) => (capTorque === null ? [] : [[unitId, capTorque]])),
    );
  }

  /** How every unit of the team stands, by its id. */
  async ofAll(transaction: Transaction, teamId: string): Promise<ReadonlyMap<string, UnitServiceDto>> {
    const answers = await this.answers(transaction, teamId, null);
    return new Map(answers.map((one) => [one.unitId, one]));
  }

  private async read(transaction: Transaction, teamId: string, unitId: string): Promise<UnitServiceDto> {
    await this.units.require(transaction, teamId, unitId);
    return this.answerOf(transaction, teamId, unitId);
  }

  /** Of a unit that the team has. */
  private async answerOf(transaction: Transaction, teamId: string, unitId: string): Promise<UnitServiceDto> {
    const [standing] = await this.answers(transaction, teamId, unitId);
    if (!standing) throw new Error(`The unit ${unitId} has no riding, not even none.`);
    return standing;
  }

  private async answers(
    transaction: Transaction,
    teamId: string,
    unitId: string | null,
  ): Promise<UnitServiceDto[]> {
    const ridings = await this.queries.riding(transaction, teamId, unitId);
    const care = await this.queries.care(transaction, teamId, unitId);
    const byUnit = new Map(care.map((row) => [row.unitId, row]));
    return ridings.map((riding) => unitServiceAnswer(riding, byUnit.get(riding.unitId)));
  }

  private insert(
    transaction: Transaction,
    { teamId, accountId }: TeamScope,
    entry: Omit<ServiceEntryEntity, 'teamId' | 'id' | 'createdAt' | 'enteredBy'>,
  ): Promise<ServiceEntryEntity> {
    return this.queries.insert(transaction, { teamId, id: newId(), ...entry, enteredBy: accountId });
  }
}
