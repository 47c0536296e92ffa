import { NativeSelect } from '@mantine/core';
import { useState } from 'react';
import { formatNumber, temperatureText } from '../../../shared/format/numbers.js';
import { numberText, parseNumber } from '../../../shared/format/parse.js';
import type { Track } from '../../../shared/http/reads/tracks.js';
import { Assumed } from '../../../shared/ui/note.js';
import { NumberField } from '../../../shared/ui/number-field.js';
import type { Pit } from '../api/pit.js';
import { texts } from '../texts.js';
import classes from './pit.module.css';

interface AirOfTheDayProps {
  readonly air: Pit['air'];
  readonly tracks: readonly Track[];
  /** What was typed here; null: the usual temperature of the altitude. */
  readonly temperatureC: number | null;
  readonly onTrack: (trackId: string) => void;
  readonly onTemperature: (celsius: number | null) => void;
}

/** Coldest and warmest air that anybody rides in, °C: beyond it something was mistyped. */
const SENSIBLE_C = { least: -40, most: 55 };

/** The track and the air that the pressures of today are for. */
export function AirOfTheDay({ air, tracks, temperatureC, onTrack, onTemperature }: AirOfTheDayProps) {
  const [typed, setTyped] = useState(numberText(temperatureC));
  if (air === null) return <p className={classes.news}>{texts.noAir}</p>;
  const type = (text: string) => {
    setTyped(text);
    const celsius = parseNumber(text);
    if (celsius === null || (celsius >= SENSIBLE_C.least && celsius <= SENSIBLE_C.most))
      onTemperature(celsius);
  };
  return (
    <div className={classes.air}>
      <NativeSelect
        className="ll-screen-only"
        label={texts.track}
        value={air.trackId}
        onChange={(event) => {
          setTyped('');
          onTrack(event.currentTarget.value);
        }}
        data={tracks.map(({ id, name }) => ({ value: id, label: name }))}
      />
      <NumberField
        className="ll-screen-only"
        label={texts.temperature}
        description={texts.temperatureHint}
        unit="°C"
        value={typed}
        onText={type}
      />
      <p className={classes.news}>
        {air.trackName} · {texts.air(formatNumber(air.altitudeM), temperatureText(air.airTemperatureC))}{' '}
        {air.isTemperatureAssumed && <Assumed />}
      </p>
    </div>
  );
}
