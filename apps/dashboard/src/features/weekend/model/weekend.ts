import { isAirTemperature } from '../../../shared/format/air-temperature.js';
import { localDay } from '../../../shared/format/time.js';
import type { Ground } from '../../../shared/http/reads/baselines.js';

/** What a weekend is for, as its address holds it: it can be sent to somebody and opened again. */
export interface WeekendPlace {
  readonly trackId?: string;
  /** First day, 2026-05-09. */
  readonly day?: string;
  readonly ground?: string;
  /** Expected air temperature, °C; left out: the usual one of the altitude. */
  readonly temperatureC?: number;
  /** Bikes that stay at home, by their ids with commas between. */
  readonly without?: string;
}

const SATURDAY = 6;
const DAYS_A_WEEK = 7;
const MS_A_DAY = 86_400_000;
/** A race weekend with its training days. */
const DAYS = 4;

/** The Saturday that comes next; today where it is one. */
export function nextSaturday(now: Date): string {
  const ahead = (SATURDAY - now.getDay() + DAYS_A_WEEK) % DAYS_A_WEEK;
  return localDay(new Date(now.getFullYear(), now.getMonth(), now.getDate() + ahead));
}

/** The last day of the weekend that begins on `day`. */
export function lastDay(day: string): string {
  // Both in the calendar of Greenwich: no clock is put forward between them.
  return new Date(Date.parse(day) + (DAYS - 1) * MS_A_DAY).toISOString().slice(0, 'YYYY-MM-DD'.length);
}

/** Whether a text is a day that there is. */
export const isDay = (text: string): boolean =>
  /^\d{4}-\d\d-\d\d$/.test(text) && new Date(`${text}T00:00:00Z`).toJSON()?.startsWith(text) === true;

/** The same place without what is said of one thing. */
export const leaveOut = (place: WeekendPlace, name: keyof WeekendPlace): WeekendPlace =>
  Object.fromEntries(Object.entries(place).filter(([key]) => key !== name));

/** The bikes that stay at home. */
export const leftOut = ({ without }: WeekendPlace): readonly string[] =>
  without === undefined || without === '' ? [] : without.split(',');

/** The same place with a bike taken along, or left at home. */
export function withBike(place: WeekendPlace, bikeId: string, rides: boolean): WeekendPlace {
  const others = leftOut(place).filter((id) => id !== bikeId);
  const left = rides ? others : [...others, bikeId];
  return left.length === 0 ? leaveOut(place, 'without') : { ...place, without: left.join(',') };
}

/** A place as an address holds it; what makes no sense is left out. */
export function placeOf(search: Record<string, unknown>): WeekendPlace {
  const text = (name: 'trackId' | 'day' | 'ground' | 'without') =>
    typeof search[name] === 'string' ? search[name] : undefined;
  const [trackId, day, ground, without] = [text('trackId'), text('day'), text('ground'), text('without')];
  const temperatureC = search['temperatureC'];
  return {
    ...(trackId !== undefined && { trackId }),
    ...(day !== undefined && isDay(day) && { day }),
    ...(ground !== undefined && { ground }),
    ...(typeof temperatureC === 'number' && isAirTemperature(temperatureC) && { temperatureC }),
    ...(without !== undefined && { without }),
  };
}

/** The forecast's question. */
export const venueOf = (trackId: string, ground: Ground, temperatureC: number | undefined) => ({
  trackId,
  condition: ground,
  ...(temperatureC !== undefined && { airTemperatureC: temperatureC }),
});
