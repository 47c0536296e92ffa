import { useState } from 'react';
import { AIR_C, isAirTemperature } from '../format/air-temperature.js';
import { temperatureText } from '../format/numbers.js';
import { numberText, parseNumber } from '../format/parse.js';
import { NumberField } from './number-field.js';
import { temperatureTexts } from './temperature-texts.js';

interface TemperatureFieldProps {
  readonly label: string;
  readonly description: string;
  /** What the field begins with, °C; null: the usual temperature of the altitude. It needs a key of its place. */
  readonly celsius: number | null;
  /**
   * Told what is to be reckoned with after each key: a temperature of air that anybody rides in, null for the usual one
   * where the field is empty or says anything else. What was there before does not stand on under a figure that is not
   * taken.
   */
  readonly onCelsius: (celsius: number | null) => void;
  readonly className?: string;
}

/** How warm it is somewhere; empty for the usual temperature there. */
export function TemperatureField({ celsius, onCelsius, ...field }: TemperatureFieldProps) {
  const [typed, setTyped] = useState(numberText(celsius));
  const type = (text: string) => {
    setTyped(text);
    const value = parseNumber(text);
    onCelsius(value !== null && isAirTemperature(value) ? value : null);
  };
  const value = parseNumber(typed);
  const isTaken = value === null || isAirTemperature(value);
  return (
    <NumberField
      {...field}
      unit="°C"
      value={typed}
      error={
        isTaken
          ? undefined
          : temperatureTexts.noAir(temperatureText(AIR_C.least), temperatureText(AIR_C.most))
      }
      onText={type}
    />
  );
}
