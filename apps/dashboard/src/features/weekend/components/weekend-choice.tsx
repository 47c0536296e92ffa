import { Checkbox, Fieldset, Group, NativeSelect, Text, TextInput } from '@mantine/core';
import { useState, type ReactNode } from 'react';
import { numberText, parseNumber } from '../../../shared/format/parse.js';
import type { Fleet } from '../../../shared/http/reads/fleet.js';
import type { Track } from '../../../shared/http/reads/tracks.js';
import { NumberField } from '../../../shared/ui/number-field.js';
import { leaveOut, leftOut, withBike, type WeekendPlace } from '../model/weekend.js';
import { texts } from '../texts.js';
import classes from './weekend.module.css';

interface WeekendChoiceProps {
  readonly tracks: readonly Track[];
  readonly fleet: Fleet;
  readonly track: Track;
  readonly day: string;
  readonly place: WeekendPlace;
  readonly onChange: (place: WeekendPlace) => void;
  /** Chooses the ground. */
  readonly children: ReactNode;
}

/** Coldest and warmest air that a forecast can be for, °C. */
const SENSIBLE_C = { least: -40, most: 55 };

/** Where and when it is, in what air, and who rides what. */
export function WeekendChoice(props: WeekendChoiceProps) {
  const { tracks, fleet, track, day, place, onChange, children } = props;
  return (
    <div className={`${classes.choice} ll-screen-only`}>
      <div className={classes.fields}>
        <NativeSelect
          label={texts.track}
          value={track.id}
          onChange={(event) => onChange({ ...place, trackId: event.currentTarget.value })}
          data={tracks.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <TextInput
          type="date"
          label={texts.day}
          value={day}
          onChange={(event) => onChange({ ...place, day: event.currentTarget.value })}
        />
        <Temperature place={place} onChange={onChange} />
      </div>
      {children}
      <Fieldset legend={texts.bikes}>
        <Text size="sm" c="dimmed" mb="sm">
          {texts.bikesLead}
        </Text>
        <Group gap="lg">
          {fleet.bikes.map((bike) => (
            <Checkbox
              key={bike.id}
              size="lg"
              label={`${fleet.riderName(bike.riderId)} · ${bike.name}`}
              checked={!leftOut(place).includes(bike.id)}
              onChange={(event) => onChange(withBike(place, bike.id, event.currentTarget.checked))}
            />
          ))}
        </Group>
      </Fieldset>
    </div>
  );
}

function Temperature({ place, onChange }: Pick<WeekendChoiceProps, 'place' | 'onChange'>) {
  const [typed, setTyped] = useState(numberText(place.temperatureC));
  const value = parseNumber(typed);
  const isSensible = value === null || (value >= SENSIBLE_C.least && value <= SENSIBLE_C.most);
  const type = (text: string) => {
    setTyped(text);
    const celsius = parseNumber(text);
    if (celsius === null) onChange(leaveOut(place, 'temperatureC'));
    else if (celsius >= SENSIBLE_C.least && celsius <= SENSIBLE_C.most)
      onChange({ ...place, temperatureC: celsius });
  };
  return (
    <NumberField
      label={texts.temperature}
      description={texts.temperatureHint}
      unit="°C"
      value={typed}
      error={isSensible ? undefined : texts.noTemperature}
      onText={type}
    />
  );
}
