import { Injectable } from '@nestjs/common';
import {
  absolutePascal,
  absolutePascalFromHectopascal,
  celsiusFromKelvin,
  hectopascalFromAbsolutePascal,
  kelvin,
  kelvinFromCelsius,
} from '@loamledger/units';
import { touchEvidence } from '../../platform/database/evidence-version.js';
import { newId } from '../../platform/database/new-id.js';
import { byId } from '../../platform/database/rows-by.js';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import { toPage, type Page } from '../../platform/http/page.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { TracksService } from '../tracks/tracks.service.js';
import type { SessionEntity } from './session.entity.js';
import type { SessionDto, SessionInputDto, SessionListQuery } from './sessions.dto.js';
import { SessionsQueries } from './sessions.queries.js';

/** A session as stored. */
export type Session = Readonly<SessionEntity>;

/** Temperatures are read to a tenth of a kelvin, pressures to a tenth of a hectopascal: half of that is the same. */
const SAME_TEMPERATURE = 0.05;
const SAME_PRESSURE = 5;

@Injectable()
export class SessionsService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: SessionsQueries,
    private readonly tracks: TracksService,
  ) {}

  async list(scope: TeamScope, query: SessionListQuery): Promise<Page<SessionDto>> {
    const rows = await this.database.inTeam(scope, (transaction) =>
      this.queries.page(transaction, scope.teamId, query, query.trackId ? { trackId: query.trackId } : {}),
    );
    return toPage(rows, query.limit, answer);
  }

  async get(scope: TeamScope, id: string): Promise<SessionDto> {
    return this.database.inTeam(scope, async (transaction) =>
      answer(await this.queries.require(transaction, scope.teamId, id)),
    );
  }

  async create(scope: TeamScope, input: SessionInputDto): Promise<SessionDto> {
    return this.database.writeOnce(scope, async (transaction) =>
      answer(await this.open(transaction, scope.teamId, input)),
    );
  }

  /** Changes the weather or the note; the track of a session stays. */
  async replace(scope: TeamScope, id: string, version: number, input: SessionInputDto): Promise<SessionDto> {
    return this.database.inTeam(scope, async (transaction) => {
      const before = await this.queries.require(transaction, scope.teamId, id);
      const columns = { ...columnsOf(input), trackId: before.trackId };
      const session = await this.queries.change(transaction, scope.teamId, id, version, columns);
      await touchEvidence(transaction, scope.teamId);
      return answer(session);
    });
  }

  require(transaction: Transaction, teamId: string, id: string): Promise<Session> {
    return this.queries.require(transaction, teamId, id);
  }

  /** These sessions by their ids. */
  async byIds(
    transaction: Transaction,
    teamId: string,
    ids: readonly string[],
  ): Promise<Map<string, Session>> {
    return byId(await this.queries.byIds(transaction, teamId, ids));
  }

  /**
   * The newest session of that day on that track under those conditions, in the weather that `input` gives; opened if
   * there is none, which the answer says. A cold morning and a warm afternoon are two sessions: pressures differ.
   */
  async ensure(
    transaction: Transaction,
    teamId: string,
    input: SessionInputDto,
  ): Promise<{ session: Session; opened: boolean }> {
    // Most find one, and need not wait for whoever is writing on the same track.
    const there = await this.newestInWeather(transaction, teamId, input);
    if (there) return { session: there, opened: false };
    await this.queries.lockTrack(transaction, teamId, input.trackId);
    const since = await this.newestInWeather(transaction, teamId, input);
    if (since) return { session: since, opened: false };
    return { session: await this.open(transaction, teamId, input), opened: true };
  }

  /** Keeps others from numbering runs in the session until the transaction ends. */
  lock(transaction: Transaction, teamId: string, id: string): Promise<void> {
    return this.queries.lock(transaction, teamId, id);
  }

  private async newestInWeather(
    transaction: Transaction,
    teamId: string,
    input: SessionInputDto,
  ): Promise<SessionEntity | undefined> {
    const key = { trackId: input.trackId, day: input.day, condition: input.condition };
    const found = await this.queries.allOfDay(transaction, teamId, key);
    return found.findLast((candidate) => isInWeather(candidate, input));
  }

  private async open(
    transaction: Transaction,
    teamId: string,
    input: SessionInputDto,
  ): Promise<SessionEntity> {
    await this.tracks.require(transaction, teamId, input.trackId);
    return this.queries.insert(transaction, { teamId, id: newId(), ...columnsOf(input) });
  }
}

/** Whether the weather that `input` gives is the session's; what it leaves out may be anything. */
export function isInWeather(
  session: Session,
  input: Pick<SessionInputDto, 'airTemperatureC' | 'stationPressureHpa'>,
): boolean {
  const { airTemperatureC, stationPressureHpa } = input;
  const sameTemperature =
    airTemperatureC == null ||
    isNear(session.airTemperature, kelvinFromCelsius(airTemperatureC), SAME_TEMPERATURE);
  const samePressure =
    stationPressureHpa == null ||
    isNear(session.stationPressure, absolutePascalFromHectopascal(stationPressureHpa), SAME_PRESSURE);
  return sameTemperature && samePressure;
}

const isNear = (stored: number | null, given: number, tolerance: number) =>
  stored !== null && Math.abs(stored - given) < tolerance;

const columnsOf = (input: SessionInputDto) => ({
  trackId: input.trackId,
  day: input.day,
  condition: input.condition,
  airTemperature: input.airTemperatureC == null ? null : kelvinFromCelsius(input.airTemperatureC),
  stationPressure:
    input.stationPressureHpa == null ? null : absolutePascalFromHectopascal(input.stationPressureHpa),
  note: input.note ?? '',
});

export const answer = (session: Session): SessionDto => ({
  id: session.id,
  trackId: session.trackId,
  day: session.day,
  condition: session.condition,
  airTemperatureC: session.airTemperature === null ? null : celsiusFromKelvin(kelvin(session.airTemperature)),
  stationPressureHpa:
    session.stationPressure === null
      ? null
      : hectopascalFromAbsolutePascal(absolutePascal(session.stationPressure)),
  note: session.note,
  version: session.version,
});
