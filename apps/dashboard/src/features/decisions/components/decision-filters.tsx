import { NativeSelect } from '@mantine/core';
import type { DecisionFilter } from '../../../shared/http/reads/decisions.js';
import type { Fleet } from '../../../shared/http/reads/fleet.js';
import type { Track } from '../../../shared/http/reads/tracks.js';
import { texts } from '../texts.js';
import classes from './decisions.module.css';

interface DecisionFiltersProps {
  readonly fleet: Fleet;
  readonly tracks: readonly Track[];
  readonly filter: DecisionFilter;
  readonly onChange: (filter: DecisionFilter) => void;
}

/** Whose decisions are shown: of a bike, for a rider, for a track. */
export function DecisionFilters({ fleet, tracks, filter, onChange }: DecisionFiltersProps) {
  const choices = [
    { name: 'bikeId', label: texts.bike, things: fleet.bikes },
    { name: 'riderId', label: texts.rider, things: fleet.riders },
    { name: 'trackId', label: texts.track, things: tracks },
  ] as const;
  return (
    <div className={classes.filters} role="group" aria-label={texts.filter}>
      {choices.map(({ name, label, things }) => (
        <NativeSelect
          key={name}
          label={label}
          value={filter[name] ?? ''}
          onChange={({ currentTarget: { value } }) => onChange(changed(filter, name, value))}
          data={[
            { value: '', label: texts.all },
            ...things.map((thing) => ({ value: thing.id, label: thing.name })),
          ]}
        />
      ))}
    </div>
  );
}

/** An empty choice leaves the filter out altogether, so that the address stays short. */
function changed(filter: DecisionFilter, name: keyof DecisionFilter, value: string): DecisionFilter {
  const rest = Object.entries(filter).filter(([key]) => key !== name);
  return Object.fromEntries(value === '' ? rest : [...rest, [name, value]]) as DecisionFilter;
}
