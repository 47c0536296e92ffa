const LANGUAGE = 'en-GB';
const SECONDS_PER_MINUTE = 60;
const SECOND_DIGITS = 2;

// Made once: making one costs a phone a hundred times what using it does.
const DAY = new Intl.DateTimeFormat(LANGUAGE, {
  weekday: 'short',
  day: 'numeric',
  month: 'short',
  year: 'numeric',
});
const MOMENT = new Intl.DateTimeFormat(LANGUAGE, {
  weekday: 'short',
  day: 'numeric',
  month: 'short',
  hour: '2-digit',
  minute: '2-digit',
});
const CLOCK = new Intl.DateTimeFormat(LANGUAGE, { hour: '2-digit', minute: '2-digit' });

/** A day with its weekday: Tue 24 Nov 2026. */
export const formatDay = (instant: string): string => DAY.format(new Date(instant));

/** A day and the time on the clock: Tue 24 Nov, 14:05. */
export const formatMoment = (instant: string): string => MOMENT.format(new Date(instant));

/** The time on the clock, and the day before it where that is not today: 14:05. */
export function formatClock(moment: number, now: number): string {
  const isToday = new Date(moment).toDateString() === new Date(now).toDateString();
  return (isToday ? CLOCK : MOMENT).format(moment);
}

/** The calendar day of a moment on this device's clock, as the API writes it: 2026-05-09. */
export function localDay(moment: Date): string {
  const two = (part: number) => String(part).padStart(2, '0');
  return `${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`;
}

/** The time of a run: 2:07.4 for 127.4 s. */
export function formatRunTime(seconds: number): string {
  const tenths = Math.round(seconds * 10);
  const minutes = Math.floor(tenths / (SECONDS_PER_MINUTE * 10));
  const rest = (tenths - minutes * SECONDS_PER_MINUTE * 10) / 10;
  return `${minutes}:${rest.toFixed(1).padStart(SECOND_DIGITS + 2, '0')}`;
}

/**
 * Seconds of a typed run time: `2:07.4`, `2.07,4` is refused, `127.4` is seconds. Null where it is no time.
 */
export function parseRunTime(text: string): number | null {
  const match = /^(?:(\d{1,3}):([0-5]?\d)|(\d{1,5}))(?:[.,](\d{1,3}))?$/.exec(text.trim());
  if (match === null) return null;
  const [, minutes, seconds, plainSeconds, fraction] = match;
  const whole =
    plainSeconds === undefined
      ? Number(minutes) * SECONDS_PER_MINUTE + Number(seconds)
      : Number(plainSeconds);
  return whole + Number(`0.${fraction ?? '0'}`);
}
