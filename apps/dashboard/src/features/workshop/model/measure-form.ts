import { numberText, parseNumber } from '../../../shared/format/parse.js';
import type { SpringUnit } from '../../../shared/http/reads/spring-units.js';

/** One try of the two-reading procedure, as typed; the pump stays on from the first reading to the second. */
export interface TwoReadings {
  readonly extendedPsi: string;
  readonly travelMm: string;
  readonly heldPsi: string;
}

/** One try of equalising, as typed. */
export interface Equalising {
  readonly beforePsi: string;
  readonly afterPsi: string;
}

/** What both procedures need to know of bore, pump and place, as typed. */
export interface Bench {
  readonly boreMm: string;
  readonly boreSdMm: string;
  readonly spacers: string;
  readonly hoseVolumeMl: string;
  readonly hoseVolumeSdMl: string;
  readonly gaugeZeroSdPsi: string;
  readonly gaugeReadingSdPsi: string;
  readonly travelSdMm: string;
  readonly altitudeM: string;
}

/** What only counts where the positive volume was not measured here. */
interface KnownVolume {
  readonly positiveVolumeMl: string;
  readonly positiveVolumeSdMl: string;
}

export interface MeasureValues extends Bench, KnownVolume {
  /** Nobody has seen the gauge read 0 with the pump off. */
  readonly zeroNeverChecked: boolean;
  readonly tries: readonly TwoReadings[];
  readonly equalisings: readonly Equalising[];
}

/** Every field of one figure; tries have paths of their own: `tries.0.heldPsi`. */
export type MeasureField = keyof Bench | keyof KnownVolume;

const DIAMETER_DECIMALS = 2;

/** Diameter of a round bore, mm, from its area, mm². */
export const boreText = ({ boreAreaMm2 }: Pick<SpringUnit, 'boreAreaMm2'>) =>
  numberText(2 * Math.sqrt(boreAreaMm2 / Math.PI), DIAMETER_DECIMALS);

const NEW_TRY: TwoReadings = { extendedPsi: '', travelMm: '', heldPsi: '' };
export const NEW_EQUALISING: Equalising = { beforePsi: '', afterPsi: '' };

/** The next try is held at the same travel unless one says otherwise. */
export const nextTry = (tries: readonly TwoReadings[]): TwoReadings => ({
  ...NEW_TRY,
  travelMm: tries.at(-1)?.travelMm ?? '',
});

export function firstValues(unit: SpringUnit): MeasureValues {
  return {
    boreMm: boreText(unit),
    boreSdMm: '',
    spacers: '0',
    hoseVolumeMl: '',
    hoseVolumeSdMl: '',
    gaugeZeroSdPsi: '',
    gaugeReadingSdPsi: '',
    travelSdMm: '',
    altitudeM: '',
    zeroNeverChecked: false,
    tries: [NEW_TRY],
    positiveVolumeMl: numberText(unit.positiveVolumeMl),
    positiveVolumeSdMl: '',
    equalisings: [NEW_EQUALISING],
  };
}

/** Area of the bore, mm²: the unit's own to the last digit where its diameter was left as it stood. */
export function boreArea({ boreMm }: Pick<Bench, 'boreMm'>, unit: Pick<SpringUnit, 'boreAreaMm2'>): number {
  if (boreMm === boreText(unit)) return unit.boreAreaMm2;
  return (Math.PI / 4) * (parseNumber(boreMm) ?? Number.NaN) ** 2;
}

/** Where something else than a number was typed, by the path of its field. */
export function notNumbers(values: MeasureValues): Record<string, string> {
  const { tries, equalisings, zeroNeverChecked, ...figures } = values;
  const rows = [...entriesOf('tries', tries), ...entriesOf('equalisings', equalisings)];
  const typed = Object.entries(figures).filter(([name]) => !(zeroNeverChecked && name === 'gaugeZeroSdPsi'));
  return Object.fromEntries(
    [...typed, ...rows]
      .filter(([, text]) => Number.isNaN(parseNumber(text)))
      .map(([path]) => [path, 'Must be a number']),
  );
}

const entriesOf = (name: string, rows: readonly object[]) =>
  rows.flatMap((row, i) =>
    Object.entries(row).map(([field, text]): [string, string] => [`${name}.${i}.${field}`, String(text)]),
  );
