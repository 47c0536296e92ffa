import { TextInput, type TextInputProps } from '@mantine/core';
import classes from './number-field.module.css';

interface NumberFieldProps extends TextInputProps {
  readonly unit?: string;
  /** Whole numbers only: the phone shows a keyboard without a point. */
  readonly whole?: boolean;
}

/** A field for a figure, its unit beside it. It holds text, so that nothing typed is lost or rewritten. */
export function NumberField({ unit, whole = false, ...input }: NumberFieldProps) {
  return (
    <TextInput
      autoComplete="off"
      inputMode={whole ? 'numeric' : 'decimal'}
      {...input}
      {...(unit !== undefined && {
        rightSection: <span className={classes.unit}>{unit}</span>,
        rightSectionWidth: `calc(${unit.length}ch + 1.5rem)`,
        'aria-description': `in ${unit}`,
      })}
    />
  );
}
