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

/** The form starts from what is in the bike now. */
export const setupValues = (current: Setup | undefined) => ({
  fork: endTexts(current?.fork),
  shock: endTexts(current?.shock),
  filledAltitudeM: '',
  filledTemperatureC: '',
  trackId: '',
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

export function setupMessage(bikeId: string, hasShock: boolean, values: SetupValues): SetupInput {
  return {
    bikeId,
    fork: endMessage(values.fork),
    shock: hasShock ? endMessage(values.shock) : null,
    filledAltitudeM: parseNumber(values.filledAltitudeM),
    filledTemperatureC: parseNumber(values.filledTemperatureC),
    trackId: values.trackId === '' ? null : values.trackId,
    reason: values.reason,
    note: values.note,
  };
}
