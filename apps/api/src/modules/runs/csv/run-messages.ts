import { PickType } from '@nestjs/swagger';
import type { FieldProblem } from '../../../platform/errors/refusal.js';
import { checkedMessage } from '../../../platform/http/validation.pipe.js';
import type { Bike } from '../../bikes/bikes.service.js';
import type { Rider } from '../../riders/riders.service.js';
import { SessionInputDto } from '../../sessions/sessions.dto.js';
import { EndSetupInputDto, SetupInputDto } from '../../setups/setups.dto.js';
import type { Track } from '../../tracks/tracks.service.js';
import { RunInputDto } from '../run-input.dto.js';
import { columnNameOf, sectionColumn, type Part } from './columns.js';
import type { Found, NameBook } from './name-book.js';
import type { CsvProblem } from './problem.js';
import type { Fields, RunDraft } from './read-row.js';

/** The riders, bikes and tracks that a file may name. */
export interface NameBooks {
  readonly tracks: NameBook<Track>;
  readonly bikes: NameBook<Bike>;
  readonly riders: NameBook<Rider>;
}

/** The set-up cells of a run: an end without any, and where it was filled, may be missing. */
export type SetupCells = Pick<SetupInputDto, 'filledAltitudeM' | 'filledTemperatureC'> &
  Partial<Pick<SetupInputDto, 'fork' | 'shock'>>;

/** A run of a file as the messages that would be sent for it one by one. */
export interface RunMessages {
  readonly bike: Bike;
  readonly session: SessionInputDto;
  /** Null where no cell of the set-up is filled. */
  readonly setup: SetupCells | null;
  /** Complete but for its session and its set-up. */
  readonly run: RunInputDto;
}

class FilledDto extends PickType(SetupInputDto, ['filledAltitudeM', 'filledTemperatureC']) {}

/** Stands for an id while a name is not known, so that the other cells are still checked. */
const UNKNOWN_ID = '00000000-0000-4000-8000-000000000000';

/** Looks the names up and holds every cell against the limits of the message it belongs to. */
export function messagesOf(draft: RunDraft, books: NameBooks): RunMessages | readonly CsvProblem[] {
  const { names, session, setup, sections } = draft.parts;
  const run = withSections(draft.parts.run, sections);
  const problems = [...draft.problems];
  const check = <Message extends object>(
    part: Part,
    type: new () => Message,
    plain: object,
    prefix?: string,
  ) => {
    const checked = checkedMessage(type, plain);
    problems.push(...asCsvProblems(draft, part, checked.problems, prefix));
    return checked.message;
  };
  const look = <Thing>(field: string, found: Found<Thing>): Thing | undefined => {
    if ('thing' in found) return found.thing;
    const problem = { field, given: names[field] ?? null, allowed: found.allowed };
    problems.push(...asCsvProblems(draft, 'names', [problem]));
    return undefined;
  };

  const track = look('track', books.tracks.find(textOf(names['track'])));
  const bike = look('bike', books.bikes.find(textOf(names['bike'])));
  const rider = 'rider' in names ? look('rider', books.riders.find(textOf(names['rider']))) : undefined;
  const sessionInput = { condition: 'dry', ...session, trackId: track?.id ?? UNKNOWN_ID };
  const messages = {
    session: check('session', SessionInputDto, sessionInput),
    setup: Object.keys(setup).length === 0 ? null : checkSetup(setup, check),
    run: check('run', RunInputDto, { ...withSpoilt(run), bikeId: bike?.id ?? UNKNOWN_ID, ...idOf(rider) }),
  };
  if (isCountedOut(run)) {
    const allowed = "yes or empty: only a spoilt run's readings can be left out";
    problems.push({ line: draft.line, column: 'readings_count', given: 'no', allowed });
  }
  return problems.length === 0 && bike ? { ...messages, bike } : problems;
}

/** Problems that name a field of a message, as problems of the cells behind it. */
export function asCsvProblems(
  draft: RunDraft,
  part: Part,
  problems: readonly FieldProblem[],
  prefix = '',
): CsvProblem[] {
  const { line, problems: unreadable } = draft;
  return problems
    .map(({ field, given, allowed }) => ({
      line,
      column: sectionColumnOf(draft, field) ?? columnNameOf(part, prefix + field),
      given: isPlain(given) ? given : null,
      allowed,
    }))
    .filter(({ column }) => column !== '' && !unreadable.some((known) => known.column === column));
}

const isPlain = (given: unknown): given is CsvProblem['given'] => given === null || typeof given !== 'object';

function checkSetup(
  setup: Fields,
  check: <M extends object>(part: Part, type: new () => M, plain: object, prefix?: string) => M,
): SetupCells {
  const { fork, shock, ...filled } = setup as { fork?: Fields; shock?: Fields };
  return {
    ...(fork && { fork: check('setup', EndSetupInputDto, fork, 'fork.') }),
    ...(shock && { shock: check('setup', EndSetupInputDto, shock, 'shock.') }),
    ...check('setup', FilledDto, filled),
  };
}

/** The times of sections as the run's message has them, in the order of the columns. */
function withSections(run: Fields, sections: Fields): Fields {
  const times = Object.entries(sections).map(([section, timeS]) => ({ section, timeS }));
  return times.length === 0 ? run : { ...run, sectionTimes: times as never };
}

/** The column of the section that a problem is about; the first of them for all together. */
function sectionColumnOf({ parts }: RunDraft, field: string): string | undefined {
  const [head, index = '0'] = field.split('.');
  const section = head === 'sectionTimes' ? Object.keys(parts.sections)[Number(index)] : undefined;
  return section === undefined ? undefined : sectionColumn(section).name;
}

/** `readings_count` alone says nothing: it belongs to a spoilt run. */
function withSpoilt(run: Fields): Fields {
  const { spoilt, ...rest } = run;
  return isSpoilt(run) ? { ...rest, spoilt: spoilt as Fields } : rest;
}

const isSpoilt = (run: Fields) => 'reason' in ((run['spoilt'] ?? {}) as Fields);
const isCountedOut = (run: Fields) =>
  !isSpoilt(run) && ((run['spoilt'] ?? {}) as Fields)['readingsCount'] === false;
const idOf = (rider: Rider | undefined) => (rider ? { riderId: rider.id } : {});
const textOf = (value: unknown) => (typeof value === 'string' ? value : '');
