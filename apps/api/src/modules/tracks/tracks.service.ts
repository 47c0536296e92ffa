import { Injectable } from '@nestjs/common';
import { touchEvidence } from '../../platform/database/evidence-version.js';
import { newId } from '../../platform/database/new-id.js';
import { TeamDatabase, type Transaction } from '../../platform/database/team-database.js';
import { InvalidField } from '../../platform/errors/refusal.js';
import { toPage, type Page, type PageQuery } from '../../platform/http/page.js';
import type { TeamScope } from '../../platform/http/scope.js';
import { gateAnswer, gateOf } from './gates.js';
import type { TrackEntity } from './track.entity.js';
import type { TrackDto, TrackInputDto } from './tracks.dto.js';
import { TracksQueries } from './tracks.queries.js';

/** A track as stored. */
export type Track = Readonly<TrackEntity>;

@Injectable()
export class TracksService {
  constructor(
    private readonly database: TeamDatabase,
    private readonly queries: TracksQueries,
  ) {}

  async list(scope: TeamScope, page: PageQuery): Promise<Page<TrackDto>> {
    const rows = await this.database.inTeam(scope, (transaction) =>
      this.queries.page(transaction, scope.teamId, page),
    );
    return toPage(rows, page.limit, answer);
  }

  async get(scope: TeamScope, id: string): Promise<TrackDto> {
    return this.database.inTeam(scope, async (transaction) =>
      answer(await this.queries.require(transaction, scope.teamId, id)),
    );
  }

  async create(scope: TeamScope, input: TrackInputDto): Promise<TrackDto> {
    refuseDoubledSections(input.sections ?? []);
    return this.database.writeOnce(scope, async (transaction) =>
      answer(
        await this.queries.insert(transaction, { teamId: scope.teamId, id: newId(), ...columnsOf(input) }),
      ),
    );
  }

  async replace(scope: TeamScope, id: string, version: number, input: TrackInputDto): Promise<TrackDto> {
    refuseDoubledSections(input.sections ?? []);
    return this.database.inTeam(scope, async (transaction) => {
      await touchEvidence(transaction, scope.teamId);
      return answer(await this.queries.change(transaction, scope.teamId, id, version, columnsOf(input)));
    });
  }

  /** The stored track, for features that compute with one. */
  require(transaction: Transaction, teamId: string, id: string): Promise<Track> {
    return this.queries.require(transaction, teamId, id);
  }

  all(transaction: Transaction, teamId: string): Promise<readonly Track[]> {
    return this.queries.all(transaction, teamId);
  }
}

/** A time belongs to a section by its name. @throws InvalidField */
export function refuseDoubledSections(sections: readonly string[]): void {
  const names = sections.map((section) => section.trim().normalize('NFC').toLowerCase());
  const doubled = sections.find((_, i) => names.indexOf(names[i] ?? '') < i || names[i] === '');
  if (doubled === undefined) return;
  throw new InvalidField('track.doubled-section', 'sections', doubled, 'names that are not empty, each once');
}

const columnsOf = (input: TrackInputDto) => ({
  name: input.name,
  altitude: input.altitudeM,
  sections: input.sections ?? [],
  note: input.note ?? '',
  startGate: gateOf('startGate', input.startGate),
  finishGate: gateOf('finishGate', input.finishGate),
});

export const answer = (track: TrackEntity): TrackDto => ({
  id: track.id,
  name: track.name,
  altitudeM: track.altitude,
  sections: track.sections,
  note: track.note,
  startGate: gateAnswer(track.startGate),
  finishGate: gateAnswer(track.finishGate),
  version: track.version,
});
