import { isAirTemperature } from '../../../shared/format/air-temperature.js';

const NAME = 'loamledger.temperature';
/** Weather of another half day is not today's, ms. */
const GOOD_FOR_MS = 6 * 3_600_000;

interface Typed {
  readonly trackId: string;
  readonly celsius: number;
  readonly at: number;
}

/** The air temperature that was typed on this device for a track; it is forgotten after some hours. */
export const typedTemperature = {
  read(trackId: string | undefined, now: number): number | null {
    const text = localStorage.getItem(NAME);
    if (text === null) return null;
    const typed = JSON.parse(text) as Partial<Typed>;
    const isGood = typed.trackId === trackId && now - (typed.at ?? 0) < GOOD_FOR_MS;
    // Also what was kept before it was asked whether there is such air.
    return isGood && typeof typed.celsius === 'number' && isAirTemperature(typed.celsius)
      ? typed.celsius
      : null;
  },
  write(trackId: string, celsius: number | null, now: number): void {
    if (celsius === null) localStorage.removeItem(NAME);
    else localStorage.setItem(NAME, JSON.stringify({ trackId, celsius, at: now } satisfies Typed));
  },
};
