import { PickType } from '@nestjs/swagger';
import { agrees, archived } from '../../platform/archive/archived.js';
import { message, nullable, number, text, whole, word } from '../../platform/archive/checks.js';
import { CONDITIONS } from '../sessions/conditions.js';
import { BaselineRunsEntity } from './baseline-runs.entity.js';
import { BaselineEntity } from './baseline.entity.js';
import { BaselineDto } from './baselines.dto.js';
import { answerAsStored, type StoredAnswer } from './stored-answer.js';

const [MAX_FINGERPRINT, MAX_VERSION] = [64, 40];
const MAX_COUNT = 1e9;

class StoredBaselineDto extends PickType(BaselineDto, ['venue', 'fork', 'shock'] as const) {}

/**
 * A baseline travels as it was offered, with the versions of the engine and of the demand model that made it: it is
 * history, and decisions refer to it. It is never taken for today's answer where it arrives, as its fingerprint is of
 * the ids it was made for; that is computed anew when it is asked for.
 */
export const BASELINE_ARCHIVE = archived(BaselineEntity, {
  columns: {
    condition: word(CONDITIONS),
    airTemperature: nullable(number(173, 373)),
    stationPressure: nullable(number(1e4, 1.2e5)),
    fingerprint: text(MAX_FINGERPRINT),
    evidenceVersion: whole(0, MAX_COUNT),
    engineVersion: text(MAX_VERSION),
    modelVersion: text(MAX_VERSION),
    runCount: whole(0, MAX_COUNT),
    answer: message(StoredBaselineDto, (stored: StoredAnswer) => answerAsStored(stored)),
  },
  rules: [agrees('setupId', 'bikeId')],
});

export const BASELINE_RUNS_ARCHIVE = archived(BaselineRunsEntity, {
  lists: { runIds: 'run' },
  columns: { evidenceVersion: whole(0, MAX_COUNT) },
});
