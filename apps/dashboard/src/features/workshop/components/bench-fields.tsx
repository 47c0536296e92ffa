import { Checkbox } from '@mantine/core';
import { wholeInChosenUnits } from '../../../shared/format/whole-figures.js';
import { NumberField } from '../../../shared/ui/number-field.js';
import { FIELD_TEXTS, texts } from '../measure-texts.js';
import type { MeasureField, MeasureValues } from '../model/measure-form.js';
import classes from './workshop.module.css';

export interface MeasureFormProps {
  readonly values: MeasureValues;
  /** By the path of the field. */
  readonly errors: Readonly<Record<string, string>>;
  readonly onChange: (part: Partial<MeasureValues>) => void;
}

interface FigureFieldsProps extends MeasureFormProps {
  readonly fields: readonly MeasureField[];
}

/** Fields of one figure each, with what an empty one means. */
export function FigureFields({ fields, values, errors, onChange }: FigureFieldsProps) {
  return (
    <div className={classes.fields}>
      {fields.map((name) => {
        const { label, unit, hint, required = false } = FIELD_TEXTS[name];
        return (
          <NumberField
            key={name}
            label={label}
            description={hint && wholeInChosenUnits(hint)}
            whole={name === 'spacers'}
            {...(unit !== '' && { unit })}
            withAsterisk={required}
            aria-required={required}
            disabled={name === 'gaugeZeroSdPsi' && values.zeroNeverChecked}
            value={values[name]}
            error={errors[name]}
            onText={(text) => onChange({ [name]: text })}
          />
        );
      })}
    </div>
  );
}

const BENCH_FIELDS: readonly MeasureField[] = [
  'hoseVolumeMl',
  'hoseVolumeSdMl',
  'boreMm',
  'boreSdMm',
  'gaugeZeroSdPsi',
  'gaugeReadingSdPsi',
  'travelSdMm',
  'spacers',
  'altitudeM',
];

/** What both procedures need to know of pump, bore and place. */
export function BenchFields(form: MeasureFormProps) {
  return (
    <>
      <FigureFields {...form} fields={BENCH_FIELDS} />
      <Checkbox
        size="lg"
        classNames={{ label: classes.checkLabel }}
        label={texts.neverChecked}
        checked={form.values.zeroNeverChecked}
        onChange={(event) => form.onChange({ zeroNeverChecked: event.currentTarget.checked })}
      />
    </>
  );
}
