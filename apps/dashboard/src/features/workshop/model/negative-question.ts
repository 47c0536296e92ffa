import { parseNumber } from '../../../shared/format/parse.js';
import type { SpringUnit } from '../../../shared/http/reads/spring-units.js';
import type { NegativeVolumeQuestion } from '../api/identify-negative-volume.js';
import type { VolumeAnswer } from '../api/identify-volume.js';
import { boreArea, type MeasureValues } from './measure-form.js';
import { airOf, commonField, isFigure, told, type Asked } from './volume-question.js';

/** The positive volume that the drop of pressure is measured against: found here, else as typed; null if neither. */
export function positiveVolume(
  values: MeasureValues,
  found: VolumeAnswer | undefined,
): { readonly volumeMl: number; readonly sdMl: number } | null {
  if (found?.positiveVolumeMl != null && found.sdMl !== null) {
    return { volumeMl: found.positiveVolumeMl, sdMl: found.sdMl };
  }
  const [volumeMl, sdMl] = [parseNumber(values.positiveVolumeMl), parseNumber(values.positiveVolumeSdMl)];
  return isFigure(volumeMl) && isFigure(sdMl) ? { volumeMl, sdMl } : null;
}

/** What can be asked of the tries that are complete; null while there is none, or a needed figure is missing. */
export function negativeQuestion(
  values: MeasureValues,
  unit: SpringUnit,
  found: VolumeAnswer | undefined,
): Asked<NegativeVolumeQuestion> | null {
  const positive = positiveVolume(values, found);
  const spacers = parseNumber(values.spacers);
  const hoseVolumeMl = parseNumber(values.hoseVolumeMl);
  const boreAreaMm2 = boreArea(values, unit);
  const tries = values.equalisings.flatMap(({ beforePsi, afterPsi }, row) => {
    const [before, after] = [parseNumber(beforePsi), parseNumber(afterPsi)];
    return isFigure(before) && isFigure(after) ? [{ row, before, after }] : [];
  });
  if (tries.length === 0 || positive === null) return null;
  if (!isFigure(spacers) || !isFigure(hoseVolumeMl) || !isFigure(boreAreaMm2)) return null;
  return {
    rows: tries.map(({ row }) => row),
    question: {
      repeats: tries.map(({ before, after }) => ({ beforePsi: before, afterPsi: after })),
      spacers,
      hoseVolumeMl,
      ...told('hoseVolumeSdMl', values.hoseVolumeSdMl),
      ...told('gaugeReadingSdPsi', values.gaugeReadingSdPsi),
      positiveVolumeMl: positive.volumeMl,
      positiveVolumeSdMl: positive.sdMl,
      spacerVolumeMl: unit.spacerVolumeMl,
      boreAreaMm2,
      shaftAreaMm2: unit.shaftAreaMm2,
      transferPositionMm: unit.transferPositionMm,
      ...airOf(values),
    },
  };
}

/** Refused fields of the question under the paths of the form. */
export function negativeRefusals(
  errors: Readonly<Record<string, string>>,
  rows: readonly number[],
): Record<string, string> {
  return Object.fromEntries(
    Object.entries(errors).map(([field, text]): [string, string] => {
      const [, repeat, reading] = /^repeats\.(\d+)\.(.+)$/.exec(field) ?? [];
      return repeat === undefined
        ? [commonField(field), text]
        : [`equalisings.${rows[Number(repeat)] ?? repeat}.${reading ?? ''}`, text];
    }),
  );
}
