import { NativeSelect } from '@mantine/core';
import type { Bike } from '../../../shared/http/reads/bikes.js';
import type { Track } from '../../../shared/http/reads/tracks.js';
import { ChoiceRow } from '../../../shared/ui/choice-row.js';
import type { DropPlace, End } from '../api/drop-test.js';
import { texts } from '../drop-texts.js';
import { withUnit } from '../../../shared/format/with-unit.js';
import classes from './workshop.module.css';

interface ChooseEndProps {
  readonly bikes: readonly Bike[];
  readonly tracks: readonly Track[];
  readonly place: DropPlace;
  readonly onChange: (part: Partial<DropPlace>) => void;
}

const FORK = { value: 'fork', label: texts.fork } as const;
const SHOCK = { value: 'shock', label: texts.shock } as const;

/** Which end of which bike, and in which air. */
export function ChooseEnd({ bikes, tracks, place, onChange }: ChooseEndProps) {
  const bike = bikes.find(({ id }) => id === place.bikeId);
  return (
    <div className={classes.places}>
      <NativeSelect
        label={texts.bike}
        value={place.bikeId}
        onChange={(event) => onChange({ bikeId: event.currentTarget.value })}
        data={bikes.map(({ id, name }) => ({ value: id, label: name }))}
      />
      <ChoiceRow<End>
        label={texts.end}
        choices={bike?.shockUnitId == null ? [FORK] : [FORK, SHOCK]}
        value={place.end}
        onChange={(end) => onChange({ end })}
      />
      <NativeSelect
        label={texts.place}
        value={place.trackId ?? ''}
        onChange={(event) => onChange({ trackId: event.currentTarget.value || undefined })}
        data={[
          { value: '', label: texts.seaLevel },
          ...tracks.map(({ id, name, altitudeM }) => ({
            value: id,
            label: `${name}, ${withUnit(String(altitudeM), 'm')}`,
          })),
        ]}
      />
    </div>
  );
}
