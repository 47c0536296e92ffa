import { NativeSelect } from '@mantine/core';
import { useNavigate } from '@tanstack/react-router';
import { texts } from '../../features/ride/texts.js';
import type { Bike } from '../../shared/http/reads/bikes.js';
import type { Track } from '../../shared/http/reads/tracks.js';
import { TemperatureField } from '../../shared/ui/temperature-field.js';
import { Kit } from '../kit/kit.js';

export interface ChoosersProps {
  readonly bike: Bike;
  /** All bikes of the same rider, to choose from. */
  readonly own: readonly Bike[];
  readonly tracks: readonly Track[];
  readonly trackId: string | undefined;
  /** The typed temperature; null where it is assumed. */
  readonly temperatureC: number | null;
  readonly onTemperature: (celsius: number | null) => void;
}

/** Which bike, which track, and how warm it is there: what the figures are for. */
export function Choosers({ bike, own, tracks, trackId, temperatureC, onTemperature }: ChoosersProps) {
  const navigate = useNavigate({ from: '/teams/$teamId/my-bike' });
  const choose = (change: { bikeId?: string; trackId?: string }) =>
    void navigate({ search: (before) => ({ ...before, ...change }), replace: true });
  return (
    <Kit>
      {own.length > 1 && (
        <NativeSelect
          label={texts.bike}
          value={bike.id}
          onChange={(event) => choose({ bikeId: event.currentTarget.value })}
          data={own.map(({ id, name }) => ({ value: id, label: name }))}
        />
      )}
      {tracks.length > 0 && trackId !== undefined && (
        <NativeSelect
          label={texts.track}
          value={trackId}
          onChange={(event) => choose({ trackId: event.currentTarget.value })}
          data={tracks.map(({ id, name }) => ({ value: id, label: name }))}
        />
      )}
      <TemperatureField
        key={trackId}
        label={texts.temperature}
        description={texts.temperatureHint}
        celsius={temperatureC}
        onCelsius={onTemperature}
      />
    </Kit>
  );
}
