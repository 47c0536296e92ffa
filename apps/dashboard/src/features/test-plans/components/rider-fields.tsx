import { Checkbox, NativeSelect, Stack, Text } from '@mantine/core';
import type { Fleet } from '../../../shared/http/reads/fleet.js';
import type { PlanValues } from '../model/plan-form.js';
import { texts } from '../texts.js';

interface RiderFieldsProps {
  readonly fleet: Fleet;
  readonly riders: PlanValues['riders'];
  readonly error: string | undefined;
  readonly onChange: (riders: PlanValues['riders']) => void;
}

/** Who rides, and where somebody has several bikes, which. */
export function RiderFields({ fleet, riders, error, onChange }: RiderFieldsProps) {
  const withBikes = fleet.riders
    .map((rider) => ({ rider, bikes: fleet.bikes.filter(({ riderId }) => riderId === rider.id) }))
    .filter(({ bikes }) => bikes.length > 0);
  const set = (riderId: string, bikeId: string | undefined) => {
    const others = Object.entries(riders).filter(([id]) => id !== riderId);
    onChange(Object.fromEntries(bikeId === undefined ? others : [...others, [riderId, bikeId]]));
  };
  if (withBikes.length === 0) return <Text>{texts.noRiders}</Text>;
  return (
    <Stack gap="sm">
      <Checkbox.Group label={texts.who} value={Object.keys(riders)} error={error}>
        <Stack gap={0}>
          {withBikes.map(({ rider, bikes }) => (
            <Checkbox
              key={rider.id}
              value={rider.id}
              py="sm"
              label={bikes.length === 1 ? `${rider.name}, ${bikes[0]?.name}` : rider.name}
              onChange={(event) => set(rider.id, event.currentTarget.checked ? bikes[0]?.id : undefined)}
            />
          ))}
        </Stack>
      </Checkbox.Group>
      {withBikes
        .filter(({ rider, bikes }) => riders[rider.id] !== undefined && bikes.length > 1)
        .map(({ rider, bikes }) => (
          <NativeSelect
            key={rider.id}
            label={texts.bikeOf(rider.name)}
            value={riders[rider.id] ?? ''}
            onChange={(event) => set(rider.id, event.currentTarget.value)}
            data={bikes.map(({ id, name }) => ({ value: id, label: name }))}
          />
        ))}
    </Stack>
  );
}
