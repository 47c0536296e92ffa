import type { SectionTimeDto } from '../modules/runs/run-input.dto.js';
import type { SeededRandom } from './random.js';
import { TRACKS, type TrackKey } from './tracks.js';

// Invented, as everything here.

/** Standard deviation of the log of a section's share of the time. */
const SHARE_SD = 0.02;
/** Sections are of unlike length: the shares go up and down by this around equal ones. */
const UNLIKE = 0.35;
const TENTHS_A_SECOND = 10;

/** Splits the time of a run over the sections of its track, each read to a tenth of a second. */
export function sectionTimes(random: SeededRandom, track: TrackKey, timeS: number): SectionTimeDto[] {
  const { sections } = TRACKS[track].input;
  const shares = sections.map((_, i) => (1 + UNLIKE * Math.cos(2 * i)) * Math.exp(random.normal(SHARE_SD)));
  const whole = shares.reduce((sum, share) => sum + share, 0);
  // Ends are rounded, not lengths, so that sections add up to the run.
  const ends = shares.map((_, i) => {
    const until = shares.slice(0, i + 1).reduce((sum, share) => sum + share, 0);
    return Math.round((until / whole) * timeS * TENTHS_A_SECOND);
  });
  return sections.map((section, i) => ({
    section,
    timeS: ((ends[i] as number) - (ends[i - 1] ?? 0)) / TENTHS_A_SECOND,
  }));
}
