import { Checkbox, Fieldset, Group, NativeSelect, Text, TextInput } from '@mantine/core';
import type { ReactNode } from 'react';
import type { Fleet } from '../../../shared/http/reads/fleet.js';
import type { Track } from '../../../shared/http/reads/tracks.js';
import { TemperatureField } from '../../../shared/ui/temperature-field.js';
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

/** Where and when it is, in what air, and who rides what. */
export function WeekendChoice(props: WeekendChoiceProps) {
  const { tracks, fleet, track, day, place, onChange, children } = props;
  return (
    <div className={`${classes.choice} ll-screen-only`}>
      <div className={classes.fields}>
        <NativeSelect
          label={texts.track}
          value={track.id}
          // How warm it is expected to be there is not known yet.
          onChange={(event) =>
            onChange({ ...leaveOut(place, 'temperatureC'), trackId: event.currentTarget.value })
          }
          data={tracks.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <TextInput
          type="date"
          label={texts.day}
          value={day}
          onChange={(event) => onChange({ ...place, day: event.currentTarget.value })}
        />
        <TemperatureField
          key={track.id}
          label={texts.temperature}
          description={texts.temperatureHint}
          celsius={place.temperatureC ?? null}
          onCelsius={(temperatureC) =>
            onChange(temperatureC === null ? leaveOut(place, 'temperatureC') : { ...place, temperatureC })
          }
        />
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
