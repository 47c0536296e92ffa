import { numberText, parseNumber } from '../../../shared/format/parse.js';
import { formatRunTime, parseRunTime } from '../../../shared/format/time.js';
import type { RunInput } from '../queue/queued-run.js';
import type { Condition, Rating } from './choices.js';
import { texts } from '../texts.js';

/** A run as it is typed trailside: text, so that nothing is lost or rewritten. */
export interface RunValues {
  readonly trackId: string;
  readonly condition: Condition;
  readonly time: string;
  /** Times of sections by their names. */
  readonly sections: Readonly<Record<string, string>>;
  /** Whether the ring figures are travel used, or travel left. */
  readonly ringAs: 'used' | 'left';
  readonly forkMm: string;
  readonly shockMm: string;
  readonly forkBottomed: boolean;
  readonly shockBottomed: boolean;
  readonly ratings: Readonly<Record<Rating, number | null>>;
  readonly spoilt: boolean;
  readonly reason: string;
  readonly readingsCount: boolean;
  readonly note: string;
}

export function emptyRun(trackId: string, condition: Condition): RunValues {
  return {
    trackId,
    condition,
    time: '',
    sections: {},
    ringAs: 'used',
    forkMm: '',
    shockMm: '',
    forkBottomed: false,
    shockBottomed: false,
    ratings: { support: null, comfort: null, rideHeight: null, fatigue: null },
    spoilt: false,
    reason: '',
    readingsCount: true,
    note: '',
  };
}

export type RunErrors = Partial<Record<keyof RunValues, string>>;

const isWrongTime = (text: string) => text.trim() !== '' && parseRunTime(text) === null;
const isWrongFigure = (text: string) => Number.isNaN(parseNumber(text));

/** What the form itself can tell before the API is asked. */
export function obviousErrors(values: RunValues): RunErrors {
  return {
    ...(values.trackId === '' && { trackId: texts.chooseTrack }),
    ...(isWrongTime(values.time) && { time: texts.timeHint }),
    ...(Object.values(values.sections).some(isWrongTime) && { sections: texts.timeHint }),
    ...(isWrongFigure(values.forkMm) && { forkMm: texts.figureHint }),
    ...(isWrongFigure(values.shockMm) && { shockMm: texts.figureHint }),
    ...(values.spoilt && values.reason.trim() === '' && { reason: texts.reasonNeeded }),
  };
}

type Ring = NonNullable<RunInput['fork']>;

function ring(text: string, ringAs: RunValues['ringAs'], bottomed: boolean): Ring | null {
  const mm = parseNumber(text);
  if (mm === null && !bottomed) return null;
  return {
    ...(mm !== null && (ringAs === 'used' ? { travelUsedMm: mm } : { travelLeftMm: mm })),
    // Not ticked means not said: nobody counts bottom-outs that did not happen.
    bottomOuts: bottomed ? 1 : null,
  };
}

const sectionTimesOf = (sections: RunValues['sections']) =>
  Object.entries(sections).flatMap(([section, text]) => {
    const timeS = parseRunTime(text);
    return timeS === null ? [] : [{ section, timeS }];
  });

/** What belongs to a run beside what the rider typed. */
export type Ride = Pick<RunInput, 'bikeId' | 'setupId' | 'riderId' | 'day' | 'startedAt' | 'airTemperatureC'>;

/** What was read off and felt, for the API. */
function riddenMessage(values: RunValues) {
  const { readingsCount } = values;
  const reason = values.reason.trim() === '' ? texts.defaultReason : values.reason;
  return {
    timeS: parseRunTime(values.time),
    sectionTimes: sectionTimesOf(values.sections),
    fork: ring(values.forkMm, values.ringAs, values.forkBottomed),
    shock: ring(values.shockMm, values.ringAs, values.shockBottomed),
    ratings: values.ratings,
    note: values.note,
    spoilt: values.spoilt ? { reason, readingsCount } : null,
  } satisfies Partial<RunInput>;
}

/** The run for the API. A spoilt one is stored too, and does not count. */
export const runMessage = (values: RunValues, ride: Ride): RunInput => ({
  ...ride,
  trackId: values.trackId,
  condition: values.condition,
  ...riddenMessage(values),
});

/** The form as it was filled in for a message, to correct it. */
export function valuesOf({ fork, shock, ratings, spoilt, ...message }: RunInput): RunValues {
  const empty = emptyRun(message.trackId ?? '', message.condition ?? 'dry');
  const isLeft = fork?.travelLeftMm != null || shock?.travelLeftMm != null;
  const millimetres = (end: Ring | null | undefined) =>
    numberText(isLeft ? end?.travelLeftMm : end?.travelUsedMm);
  return {
    ...empty,
    time: message.timeS == null ? '' : formatRunTime(message.timeS),
    sections: Object.fromEntries(
      (message.sectionTimes ?? []).map(({ section, timeS }) => [section, formatRunTime(timeS)]),
    ),
    ringAs: isLeft ? 'left' : 'used',
    forkMm: millimetres(fork),
    shockMm: millimetres(shock),
    forkBottomed: Boolean(fork?.bottomOuts),
    shockBottomed: Boolean(shock?.bottomOuts),
    ratings: { ...empty.ratings, ...ratings },
    reason: spoilt?.reason ?? '',
    readingsCount: spoilt?.readingsCount ?? true,
    note: message.note ?? '',
  };
}

const FIELD_OF: Readonly<Record<string, keyof RunValues>> = {
  timeS: 'time',
  sectionTimes: 'sections',
  fork: 'forkMm',
  shock: 'shockMm',
  spoilt: 'reason',
  trackId: 'trackId',
  condition: 'condition',
  note: 'note',
};

/** Refused fields of the message under the fields of the form. */
export function formErrors(refused: Record<string, string>): RunErrors {
  return Object.fromEntries(
    Object.entries(refused).flatMap(([path, text]) => {
      const field = FIELD_OF[path.split('.')[0] ?? ''];
      return field === undefined ? [] : [[field, text]];
    }),
  );
}
