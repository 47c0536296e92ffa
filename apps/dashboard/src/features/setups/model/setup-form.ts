import { numberText, parseNumber } from '../../../shared/format/parse.js';
import { storedText } from '../../../shared/format/entry.js';
import type { EndSetup, Setup } from '../../../shared/http/reads/setups.js';
import type { SetupInput } from '../api/create-setup.js';

const endTexts = (end: EndSetup | null | undefined) => ({
  pressurePsi: storedText(end?.pressurePsi),
  spacers: numberText(end?.spacers),
  reboundClicks: numberText(end?.reboundClicks),
  compressionClicks: numberText(end?.compressionClicks),
});

/** What leads to a set-up: the test plan whose comparison it rests on, and the track it is for; empty: for all. */
export interface SetupOrigin {
  readonly testPlanId: string | null;
  readonly trackId: string;
}

/** Set up for all tracks, on no plan's word. */
export const NO_ORIGIN: SetupOrigin = { testPlanId: null, trackId: '' };

/** The form starts from what is in the bike now, or from what was ridden before. */
export const setupValues = (start: Setup | undefined, { trackId }: SetupOrigin) => ({
  fork: endTexts(start?.fork),
  shock: endTexts(start?.shock),
  filledAltitudeM: '',
  filledTemperatureC: '',
  trackId,
  reason: '',
  note: '',
});

export type SetupValues = ReturnType<typeof setupValues>;

const endMessage = (texts: SetupValues['fork']) => ({
  // An empty figure becomes NaN, which JSON carries as null and the API refuses at that field.
  pressurePsi: parseNumber(texts.pressurePsi) ?? Number.NaN,
  spacers: parseNumber(texts.spacers) ?? Number.NaN,
  reboundClicks: parseNumber(texts.reboundClicks),
  compressionClicks: parseNumber(texts.compressionClicks),
});

export function setupMessage(
  bikeId: string,
  hasShock: boolean,
  values: SetupValues,
  { testPlanId }: SetupOrigin,
): SetupInput {
  return {
    bikeId,
    fork: endMessage(values.fork),
    shock: hasShock ? endMessage(values.shock) : null,
    filledAltitudeM: parseNumber(values.filledAltitudeM),
    filledTemperatureC: parseNumber(values.filledTemperatureC),
    trackId: values.trackId === '' ? null : values.trackId,
    testPlanId,
    reason: values.reason,
    note: values.note,
  };
}
