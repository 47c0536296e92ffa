import { TextInput, type TextInputProps } from '@mantine/core';
import { shownUnit } from '../format/units.js';
import { useShownText } from './use-shown-text.js';
import classes from './number-field.module.css';

interface NumberFieldProps extends Omit<TextInputProps, 'value' | 'defaultValue' | 'onChange'> {
  /** The unit of `value`, as in the API; the field is shown and typed in the one that the person has chosen. */
  readonly unit?: string;
  /** Whole numbers only: the phone shows a keyboard without a point. */
  readonly whole?: boolean;
  readonly value: string;
  readonly onText: (text: string) => void;
}

/** A field for a figure, its unit beside it. It holds text, so that nothing typed is lost or rewritten. */
export function NumberField({ unit, whole = false, value, onText, ...input }: NumberFieldProps) {
  const { shown, type } = useShownText(unit, value, onText);
  const shownIn = unit && shownUnit(unit);
  return (
    <TextInput
      autoComplete="off"
      inputMode={whole ? 'numeric' : 'decimal'}
      {...input}
      value={shown}
      onChange={(event) => type(event.currentTarget.value)}
      {...(shownIn !== undefined && {
        rightSection: <span className={classes.unit}>{shownIn}</span>,
        // A long one stands in several lines where it has no room beside the figure.
        rightSectionWidth: `min(50%, calc(${shownIn.length}ch + 1.5rem))`,
        'aria-description': `in ${shownIn}`,
      })}
    />
  );
}
