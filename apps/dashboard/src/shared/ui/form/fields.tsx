import { NativeSelect, Textarea, TextInput } from '@mantine/core';
import type { UseFormReturnType } from '@mantine/form';
import type { ReactNode } from 'react';
import { NumberField } from '../number-field.js';
import type { FieldSpec } from './field-spec.js';
import classes from './fields.module.css';

/** The part of a form that a field needs; whatever the values are. */
type FieldHost = Pick<UseFormReturnType<never>, 'key'> & {
  // The kit types the paths of the values; a list of fields only knows them as text.
  getInputProps: (path: never) => object;
};

/** What the kit's form gives a field; it takes an event or the value itself. */
interface InputProps {
  readonly value?: string;
  readonly error?: ReactNode;
  readonly onChange: (changed: unknown) => void;
}

/** The same for a field that gives its text. */
export function numberInput({ onChange, value = '', ...input }: InputProps) {
  return { ...input, value, onText: (text: string) => onChange(text) };
}

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
  };
  const input = form.getInputProps(field.name as never) as InputProps;
  switch (field.kind) {
    case 'text':
      return <TextInput autoComplete="off" {...props} {...input} />;
    case 'date':
      return <TextInput type="date" {...props} {...input} />;
    case 'long':
      return <Textarea autosize minRows={2} {...props} {...input} />;
    case 'choice':
      return <NativeSelect data={[...(field.choices ?? [])]} {...props} {...input} />;
    case 'number':
    case 'whole':
      return (
        <NumberField
          whole={field.kind === 'whole'}
          {...(field.unit !== undefined && { unit: field.unit })}
          {...props}
          {...numberInput(input)}
        />
      );
  }
}
