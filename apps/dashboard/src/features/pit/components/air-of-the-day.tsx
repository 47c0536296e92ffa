import { NativeSelect } from '@mantine/core';
import { formatNumber, temperatureText } from '../../../shared/format/numbers.js';
import type { Track } from '../../../shared/http/reads/tracks.js';
import { Assumed } from '../../../shared/ui/note.js';
import { TemperatureField } from '../../../shared/ui/temperature-field.js';
import type { Pit } from '../api/pit.js';
import { texts } from '../texts.js';
import classes from './pit.module.css';

interface AirOfTheDayProps {
  readonly air: Pit['air'];
  readonly tracks: readonly Track[];
  /** The track that was chosen; undefined: the one that the answer is about. */
  readonly trackId: string | undefined;
  /** What was typed for it; null: the usual temperature of the altitude. */
  readonly temperatureC: number | null;
  readonly onTrack: (trackId: string) => void;
  readonly onTemperature: (celsius: number | null) => void;
}

/** The track and the air that the pressures of today are for. */
export function AirOfTheDay(props: AirOfTheDayProps) {
  const { air, tracks, trackId, temperatureC, onTrack, onTemperature } = props;
  if (air === null) return <p className={classes.news}>{texts.noAir}</p>;
  const place = trackId ?? air.trackId;
  return (
    <div className={classes.air}>
      <NativeSelect
        className="ll-screen-only"
        label={texts.track}
        value={place}
        onChange={(event) => onTrack(event.currentTarget.value)}
        data={tracks.map(({ id, name }) => ({ value: id, label: name }))}
      />
      <TemperatureField
        key={place}
        className="ll-screen-only"
        label={texts.temperature}
        description={texts.temperatureHint}
        celsius={temperatureC}
        onCelsius={onTemperature}
      />
      <p className={classes.news}>
        {air.trackName} · {texts.air(formatNumber(air.altitudeM), temperatureText(air.airTemperatureC))}{' '}
        {air.isTemperatureAssumed && <Assumed />}
      </p>
      <p className={classes.hint}>{texts.elsewhere}</p>
    </div>
  );
}
