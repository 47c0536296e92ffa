import { useState } from 'react';
import { numberText, parseNumber } from '../format/parse.js';
import { NumberField } from './number-field.js';

/** Coldest and warmest air that anybody rides in, °C: beyond it something was mistyped. */
export const SENSIBLE_C = { least: -40, most: 55 };

interface TemperatureFieldProps {
  readonly label: string;
  readonly description: string;
  /** What the field begins with, °C; null: the usual temperature of the altitude. It needs a key of its place. */
  readonly celsius: number | null;
  /** Told each temperature that is typed and that there can be; null where the field is empty. */
  readonly onCelsius: (celsius: number | null) => void;
  /** What is let through, °C; any number where it is left out. */
  readonly within?: { readonly least: number; readonly most: number };
  /** Said at the field of what is not let through. */
  readonly error?: string;
  readonly className?: string;
}

/** How warm it is somewhere; empty for the usual temperature there. */
export function TemperatureField(props: TemperatureFieldProps) {
  const { celsius, onCelsius, within, error, ...field } = props;
  const [typed, setTyped] = useState(numberText(celsius));
  const isLetThrough = (value: number | null) =>
    value === null ||
    (within === undefined ? !Number.isNaN(value) : value >= within.least && value <= within.most);
  const type = (text: string) => {
    setTyped(text);
    const value = parseNumber(text);
    if (isLetThrough(value)) onCelsius(value);
  };
  return (
    <NumberField
      {...field}
      unit="°C"
      value={typed}
      error={isLetThrough(parseNumber(typed)) ? undefined : error}
      onText={type}
    />
  );
}
