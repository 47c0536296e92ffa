import type { ServiceEntryEntity } from './service-entry.entity.js';
import type { ServiceEntryDto, ServiceStandingDto, UnitServiceDto } from './unit-service.dto.js';
import { HoursOfNothing } from './unit-service.errors.js';
import type { Riding } from './unit-service.queries.js';

const SECONDS_PER_HOUR = 3_600;
const hours = (seconds: number) => seconds / SECONDS_PER_HOUR;

/** What is entered of a unit's manual: the time between services, s, and the torque of the air cap, N·m. */
export interface Care {
  readonly serviceInterval: number | null;
  readonly capTorque: number | null;
}

const NOTHING_ENTERED: Care = { serviceInterval: null, capTorque: null };

/** How a unit stands, field by field. */
export function unitServiceAnswer(riding: Riding, care: Care = NOTHING_ENTERED): UnitServiceDto {
  const { serviceInterval: interval, capTorque } = care;
  return {
    unitId: riding.unitId,
    care: { serviceIntervalHours: interval === null ? null : hours(interval), capTorqueNm: capTorque },
    standing: standingAnswer(riding, interval),
  };
}

function standingAnswer(riding: Riding, interval: number | null): ServiceStandingDto {
  const since = riding.timed + riding.assumed + riding.entered;
  return {
    intervalHours: interval === null ? null : hours(interval),
    lastServiceDay: riding.lastServiceDay,
    hoursSince: hours(since),
    hoursLeft: interval === null ? null : hours(interval - since),
    isDue: interval !== null && since >= interval,
    timedRuns: riding.timedRuns,
    timedHours: hours(riding.timed),
    assumedRuns: riding.assumedRuns,
    assumedHours: hours(riding.assumed),
    uncountedRuns: riding.uncountedRuns,
    enteredHours: hours(riding.entered),
  };
}

/** Hours as a person writes them, in seconds. */
export const secondsOf = (given: number): number => given * SECONDS_PER_HOUR;

/** @throws HoursOfNothing where an entry about riding has none, or a service has some. */
export function refuseHoursOfNothing({
  kind,
  ridingHours,
}: Pick<ServiceEntryDto, 'kind' | 'ridingHours'>): void {
  if ((kind === 'hours') !== (ridingHours !== null)) throw new HoursOfNothing(kind, ridingHours);
}

/** An entry as a message. */
export const entryAnswer = (entry: ServiceEntryEntity, isTakenBack: boolean): ServiceEntryDto => ({
  id: entry.id,
  unitId: entry.unitId,
  kind: entry.kind,
  day: entry.day,
  ridingHours: entry.riding === null ? null : hours(entry.riding),
  doneBy: entry.doneBy,
  note: entry.note,
  enteredAt: entry.createdAt.toISOString(),
  takesBackId: entry.takesBackId,
  isTakenBack,
});
