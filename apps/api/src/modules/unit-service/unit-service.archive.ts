import { accepted, agrees, archived } from '../../platform/archive/archived.js';
import { message, nullable, number, text } from '../../platform/archive/checks.js';
import { ServiceEntryEntity } from './service-entry.entity.js';
import { entryAnswer, refuseHoursOfNothing, secondsOf } from './service-standing.js';
import { UnitCareEntity } from './unit-care.entity.js';
import { ServiceEntryDto } from './unit-service.dto.js';
import { TakesBackAnother } from './unit-service.errors.js';

const MOST_HOURS_BETWEEN_SERVICES = 2_000;
const MOST_TORQUE = 100;
const MAX_NAME = 80;

export const UNIT_CARE_ARCHIVE = archived(UnitCareEntity, {
  people: ['enteredBy'],
  columns: {
    serviceInterval: nullable(number(0, secondsOf(MOST_HOURS_BETWEEN_SERVICES))),
    capTorque: nullable(number(0, MOST_TORQUE)),
  },
});

export const SERVICE_ENTRY_ARCHIVE = archived(ServiceEntryEntity, {
  people: ['enteredBy'],
  columns: { doneBy: text(MAX_NAME) },
  row: message(ServiceEntryDto, (entry: ServiceEntryEntity) => entryAnswer(entry, false)),
  rules: [
    agrees('takesBackId', 'unitId'),
    accepted((entry, of) => {
      refuseHoursOfNothing(entryAnswer(entry, false));
      const { kind, takesBackId } = entry;
      const wrong = of('takesBackId') as ServiceEntryEntity | null;
      if (wrong && (wrong.takesBackId !== null || wrong.kind !== kind))
        throw new TakesBackAnother(takesBackId);
    }),
  ],
});
