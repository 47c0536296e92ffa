import type { TrackInput } from '../api/save-track.js';
import { gateTexts as texts } from '../texts.js';

type Gate = NonNullable<TrackInput['startGate']>;

/** The two ends of a gate, as typed. */
export interface GateValues {
  readonly from: string;
  readonly to: string;
}

const DEGREES = String.raw`([+-]?\d+(?:\.\d+)?)°?`;
/** As maps give a place: 46.50211, 8.10347. */
const PLACE = new RegExp(String.raw`^${DEGREES}(?:\s*[,;]\s*|\s+)${DEGREES}$`);
/** A tenth of a metre on the ground. */
const DECIMALS = 6;

const placeText = (latitudeDeg: number, longitudeDeg: number) =>
  `${Number(latitudeDeg.toFixed(DECIMALS))}, ${Number(longitudeDeg.toFixed(DECIMALS))}`;

export const gateValues = (gate: Gate | null | undefined): GateValues =>
  gate == null
    ? { from: '', to: '' }
    : {
        from: placeText(gate.fromLatitudeDeg, gate.fromLongitudeDeg),
        to: placeText(gate.toLatitudeDeg, gate.toLongitudeDeg),
      };

function readPlace(text: string): readonly [latitudeDeg: number, longitudeDeg: number] | null {
  const [, latitude, longitude] = PLACE.exec(text.trim().replaceAll('−', '-')) ?? [];
  return latitude === undefined ? null : [Number(latitude), Number(longitude)];
}

/** The gate as the API takes it: the stored one to the last digit where it was left as it stood; null where it is empty. */
export function gateMessage(values: GateValues, stored: Gate | null | undefined): Gate | null {
  const shown = gateValues(stored);
  if (stored != null && values.from === shown.from && values.to === shown.to) return stored;
  const [from, to] = [readPlace(values.from), readPlace(values.to)];
  if (from === null || to === null) return null;
  return {
    fromLatitudeDeg: from[0],
    fromLongitudeDeg: from[1],
    toLatitudeDeg: to[0],
    toLongitudeDeg: to[1],
  };
}

/** What is wrong with a gate as it is typed, by the path of its field. */
export function gateErrors(name: 'startGate' | 'finishGate', values: GateValues): Record<string, string> {
  const ends = (['from', 'to'] as const).filter((end) => values[end].trim() !== '' || isBegun(values));
  return Object.fromEntries(
    ends.flatMap((end) => (readPlace(values[end]) === null ? [[`${name}.${end}`, texts.noPlace]] : [])),
  );
}

/** One end alone is no gate. */
const isBegun = ({ from, to }: GateValues) => from.trim() !== '' || to.trim() !== '';

/** The refused fields of the message under the names of the form: a place is one field there. */
export const gateFormErrors = (errors: Record<string, string>): Record<string, string> =>
  Object.fromEntries(
    Object.entries(errors).map(([field, text]) => {
      const [, gate, end = 'from'] = /^(startGate|finishGate)(?:\.(from|to).*)?$/.exec(field) ?? [];
      return [gate === undefined ? field : `${gate}.${end}`, text];
    }),
  );
