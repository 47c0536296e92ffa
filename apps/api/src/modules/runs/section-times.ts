import type { RunInputDto } from './run-input.dto.js';
import type { SectionTime } from './run.entity.js';
import { NoSuchSection, SectionsBeyondTime, SectionTwice } from './runs.errors.js';

/** Times are read to a tenth of a second: as many sections as there are may each be rounded up by half of it, s. */
const ROUNDING_S = 0.05;

/**
 * The times of the sections in riding order, as the track names them, whatever the case they were given in.
 * @throws NoSuchSection, SectionTwice, SectionsBeyondTime
 */
export function sectionTimesOf(
  { sectionTimes = [], timeS }: Pick<RunInputDto, 'sectionTimes' | 'timeS'>,
  track: { readonly name: string; readonly sections: readonly string[] },
): SectionTime[] {
  const times = new Map<string, number>();
  for (const [i, given] of sectionTimes.entries()) {
    const section = track.sections.find((name) => keyOf(name) === keyOf(given.section));
    if (section === undefined) throw new NoSuchSection(i, given.section, track);
    if (times.has(section)) throw new SectionTwice(i, section);
    times.set(section, given.timeS);
  }
  const sum = [...times.values()].reduce((total, time) => total + time, 0);
  if (timeS != null && sum > timeS + ROUNDING_S * (times.size + 1)) throw new SectionsBeyondTime(sum, timeS);
  return track.sections.flatMap((section) => {
    const time = times.get(section);
    return time === undefined ? [] : [{ section, time }];
  });
}

const keyOf = (name: string) => name.trim().normalize('NFC').toLowerCase();
