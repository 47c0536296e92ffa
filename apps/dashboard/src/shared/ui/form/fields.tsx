import { NativeSelect, Textarea, TextInput } from '@mantine/core';
import type { UseFormReturnType } from '@mantine/form';
import { NumberField } from '../number-field.js';
import type { FieldSpec } from './field-spec.js';
import classes from './fields.module.css';

/** The part of a form that a field needs; whatever the values are. */
type FieldHost = Pick<UseFormReturnType<never>, 'key'> & {
  // The kit types the paths of the values; a list of fields only knows them as text.
  getInputProps: (path: never) => object;
};

interface FieldsProps {
  readonly fields: readonly FieldSpec[];
  readonly form: FieldHost;
}

/** The fields of a list, in as many columns as have room. */
export function Fields({ fields, form }: FieldsProps) {
  return (
    <div className={classes.grid}>
      {fields.map((field) => (
        <Field key={field.name} field={field} form={form} />
      ))}
    </div>
  );
}

function Field({ field, form }: { field: FieldSpec; form: FieldHost }) {
  const props = {
    label: field.label,
    description: field.hint,
    withAsterisk: field.required === true,
    'aria-required': field.required === true,
    ...form.getInputProps(field.name as never),
  };
  switch (field.kind) {
    case 'text':
      return <TextInput autoComplete="off" {...props} />;
    case 'long':
      return <Textarea autosize minRows={2} {...props} />;
    case 'choice':
      return <NativeSelect data={[...(field.choices ?? [])]} {...props} />;
    case 'number':
    case 'whole':
      return (
        <NumberField
          whole={field.kind === 'whole'}
          {...(field.unit !== undefined && { unit: field.unit })}
          {...props}
        />
      );
  }
}
