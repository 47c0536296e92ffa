import { agrees, archived } from '../../platform/archive/archived.js';
import { list, message, number, part, text } from '../../platform/archive/checks.js';
import { MAX_SECTIONS } from '../tracks/tracks.dto.js';
import { runAnswer } from './run-answer.js';
import { LONGEST_RUN_S } from './run-input.dto.js';
import { RunEntity } from './run.entity.js';
import { RunDto } from './runs.dto.js';

const MAX_NAME = 80;
/** What the message takes from the run's session and readings, which are checked by themselves. */
const ELSEWHERE = { day: '2000-01-01', condition: 'dry', readings: [], hidden: false } as const;

export const RUN_ARCHIVE = archived(RunEntity, {
  people: ['loggedBy', 'voidedBy'],
  columns: {
    sectionTimes: list(part({ section: text(MAX_NAME), time: number(0, LONGEST_RUN_S) }), MAX_SECTIONS),
  },
  row: message(RunDto, (run: RunEntity) => runAnswer(run, ELSEWHERE)),
  rules: [agrees('setupId', 'bikeId')],
});
