import { millimetresFromMetres } from '@loamledger/units';
import type { Condition } from '../sessions/conditions.js';
import type { End } from '../suspension/end-inputs.js';
import type { RingReadingEntity } from './ring-reading.entity.js';
import type { RunEntity } from './run.entity.js';
import type { EndReadingDto, HitDto, RunDto } from './runs.dto.js';

/** What the answer needs beside the run's own row. */
export interface RunContext {
  readonly day: string;
  readonly condition: Condition;
  /** The run's readings. */
  readonly readings: readonly RingReadingEntity[];
  /** Whether the reader may not see now what was ridden: set-up and hit heights are left out. */
  readonly hidden: boolean;
}

export function runAnswer(run: RunEntity, context: RunContext): RunDto {
  const reading = (end: End) => {
    const row = context.readings.find((candidate) => candidate.end === end);
    return row ? readingAnswer(row, context.hidden) : null;
  };
  return {
    id: run.id,
    sessionId: run.sessionId,
    trackId: run.trackId,
    day: context.day,
    condition: context.condition,
    riderId: run.riderId,
    bikeId: run.bikeId,
    setupId: context.hidden ? null : run.setupId,
    orderInSession: run.orderInSession,
    startedAt: run.startedAt?.toISOString() ?? null,
    timeS: run.time,
    sectionTimes: run.sectionTimes.map(({ section, time }) => ({ section, timeS: time })),
    fork: reading('fork'),
    shock: reading('shock'),
    forkBottomOuts: run.forkBottomOuts,
    shockBottomOuts: run.shockBottomOuts,
    ratings: {
      support: run.supportRating,
      comfort: run.comfortRating,
      rideHeight: run.rideHeightRating,
      fatigue: run.fatigueRating,
    },
    note: run.note,
    voided: run.voidedAt && {
      reason: run.voidReason ?? '',
      readingsCount: run.readingsCount,
      at: run.voidedAt.toISOString(),
    },
    loggedAt: run.createdAt.toISOString(),
    loggedBy: run.loggedBy,
  };
}

function readingAnswer(reading: RingReadingEntity, hidden: boolean): EndReadingDto {
  const { unit } = reading.inputs;
  return {
    travelUsedMm: millimetresFromMetres(reading.travelUsed),
    travelLeftMm: millimetresFromMetres(unit.stroke - reading.travelUsed),
    readingSdMm: millimetresFromMetres(reading.readingSd),
    // Ring and hit height together would tell the spring.
    hit: hidden ? null : hitAnswer(reading),
  };
}

function hitAnswer(reading: RingReadingEntity): HitDto | null {
  const { hitKind, hitHeight, hitLower, hitUpper, logHeight, logSd } = reading;
  if (hitKind === null || hitHeight === null || hitLower === null || logHeight === null || logSd === null)
    return null;
  return { kind: hitKind, heightM: hitHeight, lowerM: hitLower, upperM: hitUpper, logHeight, logSd };
}
