import { numberText, parseNumber } from '../../../shared/format/parse.js';
import type { UnitService } from '../api/unit-service.js';

/** A new entry is about a service today. */
export const entryValues = (today: string, doneBy: string) => ({
  kind: 'service',
  day: today,
  doneBy,
  ridingHours: '',
  note: '',
});

export const entryMessage = ({ kind, ridingHours, ...rest }: ReturnType<typeof entryValues>) =>
  kind === 'hours'
    ? // An empty figure becomes NaN, which JSON carries as null and the API refuses at that field.
      { ...rest, kind: 'hours' as const, ridingHours: parseNumber(ridingHours) ?? Number.NaN }
    : { ...rest, kind: 'service' as const, ridingHours: null };

export const careValues = ({ care }: UnitService) => ({
  serviceIntervalHours: numberText(care.serviceIntervalHours),
  capTorqueNm: numberText(care.capTorqueNm),
});

export const careMessage = (values: ReturnType<typeof careValues>) => ({
  serviceIntervalHours: parseNumber(values.serviceIntervalHours),
  capTorqueNm: parseNumber(values.capTorqueNm),
});
