import { NativeSelect } from '@mantine/core';
import { formatDay } from '../../../shared/format/time.js';
import type { Bike } from '../../../shared/http/reads/bikes.js';
import type { Setup } from '../../../shared/http/reads/setups.js';
import type { Track } from '../../../shared/http/reads/tracks.js';
import { texts } from '../texts.js';
import classes from './comparisons.module.css';

/** What is chosen to be compared. */
interface ChosenSetups {
  readonly bikeId?: string;
  readonly trackId?: string;
  readonly currentSetupId?: string;
  readonly setupId?: string;
}

interface ChooseSetupsProps {
  readonly bikes: readonly Bike[];
  readonly tracks: readonly Track[];
  readonly setups: readonly Setup[];
  readonly chosen: ChosenSetups;
  readonly onChange: (chosen: ChosenSetups) => void;
}

const options = (things: readonly { id: string; name: string }[]) => [
  { value: '', label: texts.choose },
  ...things.map(({ id, name }) => ({ value: id, label: name })),
];
const choiceOf = ({ id, revision, createdAt }: Setup) => ({
  value: id,
  label: `${texts.setup(revision)}, ${formatDay(createdAt)}`,
});

/** Which set-ups of which bike, ridden where. */
export function ChooseSetups({ bikes, tracks, setups, chosen, onChange }: ChooseSetupsProps) {
  const { bikeId, trackId, currentSetupId, setupId } = chosen;
  const place = { ...(bikeId && { bikeId }), ...(trackId && { trackId }) };
  const others = setups.filter(({ id }) => id !== currentSetupId);
  return (
    <div className={`${classes.choose} ll-screen-only`}>
      <NativeSelect
        label={texts.bike}
        value={bikeId ?? ''}
        onChange={(event) => onChange({ ...(trackId && { trackId }), bikeId: event.currentTarget.value })}
        data={options(bikes)}
      />
      <NativeSelect
        label={texts.track}
        value={trackId ?? ''}
        onChange={(event) => onChange({ ...chosen, trackId: event.currentTarget.value })}
        data={options(tracks)}
      />
      {setups.length > 0 && (
        <>
          <NativeSelect
            label={texts.currentSetup}
            value={currentSetupId ?? ''}
            onChange={(event) => onChange({ ...place, currentSetupId: event.currentTarget.value })}
            data={[{ value: '', label: texts.choose }, ...setups.map(choiceOf)]}
          />
          <NativeSelect
            label={texts.otherSetup}
            value={setupId ?? ''}
            onChange={(event) => {
              const other = event.currentTarget.value;
              const now = currentSetupId && { currentSetupId };
              onChange({ ...place, ...now, ...(other !== '' && { setupId: other }) });
            }}
            data={[{ value: '', label: texts.allOthers }, ...others.map(choiceOf)]}
          />
        </>
      )}
    </div>
  );
}
