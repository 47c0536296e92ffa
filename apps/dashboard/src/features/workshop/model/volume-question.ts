import { parseNumber } from '../../../shared/format/parse.js';
import type { SpringUnit } from '../../../shared/http/reads/spring-units.js';
import type { VolumeQuestion } from '../api/identify-volume.js';
import { boreArea, type MeasureValues } from './measure-form.js';

const PER_CENT = 100;

/** A question with the places in the form that its tries come from, since incomplete tries wait. */
export interface Asked<Question> {
  readonly question: Question;
  readonly rows: readonly number[];
}

/** What can be asked of the tries that are complete; null while there is none, or a needed figure is missing. */
export function volumeQuestion(values: MeasureValues, unit: SpringUnit): Asked<VolumeQuestion> | null {
  const spacers = parseNumber(values.spacers);
  const hoseVolumeMl = parseNumber(values.hoseVolumeMl);
  const boreAreaMm2 = boreArea(values, unit);
  const tries = values.tries.flatMap(({ extendedPsi, travelMm, heldPsi }, row) => {
    const [extended, travel, held] = [extendedPsi, travelMm, heldPsi].map(parseNumber);
    return isFigure(extended) && isFigure(travel) && isFigure(held) ? [{ row, extended, travel, held }] : [];
  });
  if (tries.length === 0) return null;
  if (!isFigure(spacers) || !isFigure(hoseVolumeMl) || !isFigure(boreAreaMm2)) return null;
  return {
    rows: tries.map(({ row }) => row),
    question: {
      runs: tries.map(({ extended, travel, held }) => ({
        spacers,
        readings: [
          { travelMm: 0, pressurePsi: extended },
          { travelMm: travel, pressurePsi: held },
        ],
      })),
      boreAreaMm2,
      spacerVolumeMl: unit.spacerVolumeMl,
      hoseVolumeMl,
      ...told('hoseVolumeSdMl', values.hoseVolumeSdMl),
      ...told('gaugeReadingSdPsi', values.gaugeReadingSdPsi),
      ...told('travelSdMm', values.travelSdMm),
      ...boreSd(values),
      ...(values.zeroNeverChecked ? { gaugeZeroSdPsi: null } : told('gaugeZeroSdPsi', values.gaugeZeroSdPsi)),
      ...airOf(values),
    },
  };
}

export const isFigure = (value: number | null | undefined): value is number =>
  value !== null && value !== undefined && Number.isFinite(value);

/** A figure where one was typed; what is left empty is assumed by the service, which says so. */
export function told<Name extends string>(name: Name, text: string): Partial<Record<Name, number>> {
  const value = parseNumber(text);
  return isFigure(value) ? ({ [name]: value } as Record<Name, number>) : {};
}

/** The air around by the altitude; sea level is assumed without. */
export function airOf({ altitudeM }: Pick<MeasureValues, 'altitudeM'>): Pick<VolumeQuestion, 'air'> {
  const altitude = parseNumber(altitudeM);
  return isFigure(altitude) ? { air: { altitudeM: altitude } } : {};
}

/** An area is out by twice what its diameter is out by, relative. */
function boreSd({ boreMm, boreSdMm }: MeasureValues): Pick<VolumeQuestion, 'boreAreaSdPct'> {
  const [bore, sd] = [parseNumber(boreMm), parseNumber(boreSdMm)];
  return isFigure(bore) && bore > 0 && isFigure(sd) ? { boreAreaSdPct: (PER_CENT * 2 * sd) / bore } : {};
}

const READING_FIELDS = { '0.pressurePsi': 'extendedPsi', '1.pressurePsi': 'heldPsi' } as const;
/** The bore is entered by its diameter and asked by its area. */
const OF_AREA = { boreAreaMm2: 'boreMm', boreAreaSdPct: 'boreSdMm' } as const;

/** Refused fields of the question under the paths of the form. */
export function volumeRefusals(
  errors: Readonly<Record<string, string>>,
  rows: readonly number[],
): Record<string, string> {
  return Object.fromEntries(
    Object.entries(errors).map(([field, text]): [string, string] => {
      const [, run, reading] = /^runs\.(\d+)\.readings\.(.+)$/.exec(field) ?? [];
      if (run !== undefined && reading !== undefined) {
        const own =
          reading in READING_FIELDS ? READING_FIELDS[reading as keyof typeof READING_FIELDS] : 'travelMm';
        return [`tries.${rows[Number(run)] ?? run}.${own}`, text];
      }
      if (field in OF_AREA) {
        return [OF_AREA[field as keyof typeof OF_AREA], text.replace('Must', 'Its area must')];
      }
      return [commonField(field), text];
    }),
  );
}

/** Fields that stand once in the form. */
export function commonField(field: string): string {
  if (/^runs\.\d+\.spacers$/.test(field)) return 'spacers';
  return field.replace(/^air\./, '');
}
