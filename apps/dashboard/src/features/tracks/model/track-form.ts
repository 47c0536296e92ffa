import { numberText, parseNumber } from '../../../shared/format/parse.js';
import type { Track } from '../../../shared/http/reads/tracks.js';
import { gateMessage, gateValues } from './gates.js';
import type { TrackInput } from '../api/save-track.js';

export const trackValues = (track: Track | undefined) => ({
  name: track?.name ?? '',
  altitudeM: numberText(track?.altitudeM),
  sections: (track?.sections ?? []).join('\n'),
  note: track?.note ?? '',
  startGate: gateValues(track?.startGate),
  finishGate: gateValues(track?.finishGate),
});

export const trackMessage = (
  values: ReturnType<typeof trackValues>,
  track: Track | undefined,
): TrackInput => ({
  name: values.name,
  // An empty altitude becomes NaN, which JSON carries as null and the API refuses at that field.
  altitudeM: parseNumber(values.altitudeM) ?? Number.NaN,
  sections: values.sections
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== ''),
  note: values.note,
  startGate: gateMessage(values.startGate, track?.startGate),
  finishGate: gateMessage(values.finishGate, track?.finishGate),
});
