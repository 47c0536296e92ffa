import { Button, Group, NativeSelect, Stack, Text } from '@mantine/core';
import { useState, type FormEvent } from 'react';
import { formatCount } from '../../../shared/format/numbers.js';
import { parseNumber } from '../../../shared/format/parse.js';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import type { Ground } from '../../../shared/http/reads/baselines.js';
import type { Bike } from '../../../shared/http/reads/bikes.js';
import type { Track } from '../../../shared/http/reads/tracks.js';
import { Empty } from '../../../shared/ui/empty.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { FileField } from '../../../shared/ui/file-field.js';
import { LinkButton } from '../../../shared/ui/link.js';
import { NumberField } from '../../../shared/ui/number-field.js';
import { useImportRecording, usePreviewRecording, type Recording } from '../api/recording.js';
import { texts } from '../texts.js';
import { NoGates } from './no-gates.js';
import { RecordedRuns } from './recorded-runs.js';

interface RecordingFormProps {
  readonly teamId: string;
  readonly tracks: readonly Track[];
  readonly bikes: readonly Bike[];
  readonly grounds: readonly Ground[];
}

const named = (things: readonly { id: string; name: string }[]) =>
  things.map(({ id, name }) => ({ value: id, label: name }));

/** From a recording to runs: choose it, see the runs between the gates, store them. */
export function RecordingForm({ teamId, tracks, bikes, grounds }: RecordingFormProps) {
  const timed = tracks.filter(({ startGate, finishGate }) => startGate != null && finishGate != null);
  const [gpx, setGpx] = useState('');
  const [positionSd, setPositionSd] = useState('');
  const [trackId, setTrackId] = useState(timed[0]?.id ?? '');
  const [bikeId, setBikeId] = useState(bikes[0]?.id ?? '');
  const [condition, setCondition] = useState<Ground>('dry');
  const preview = usePreviewRecording(teamId);
  const store = useImportRecording(teamId);
  if (timed.length === 0) return <NoGates teamId={teamId} tracks={tracks} />;
  if (bikes.length === 0) {
    return (
      <Empty
        isPart
        title={texts.noBikes}
        action={
          <LinkButton to="/teams/$teamId/team/bikes" params={{ teamId }}>
            {texts.enterBike}
          </LinkButton>
        }
      >
        {texts.noBikesLead}
      </Empty>
    );
  }

  // What was checked is no longer what would be stored.
  const changing =
    <Value,>(set: (value: Value) => void) =>
    (value: Value) => {
      set(value);
      preview.reset();
      store.reset();
    };
  const sd = parseNumber(positionSd);
  const recording: Recording = {
    gpx,
    query: {
      trackId,
      bikeId,
      condition,
      ...(sd !== null && { positionSdM: sd }),
      // The days of the runs are those of this device's clock.
      utcOffsetMin: -new Date().getTimezoneOffset(),
    },
  };
  const check = (event: FormEvent) => {
    event.preventDefault();
    preview.mutate(recording);
  };
  const errors = fieldErrors(preview.error);

  return (
    <Stack>
      <form onSubmit={check} noValidate>
        <Stack maw="40rem">
          <Text c="dimmed">{texts.recordingLead}</Text>
          <FileField
            label={texts.gpxFile}
            accept=".gpx,application/gpx+xml"
            notDone={texts.notChecked}
            onText={(text) => changing(setGpx)(text ?? '')}
          />
          <NativeSelect
            label={texts.track}
            data={named(timed)}
            value={trackId}
            onChange={(event) => changing(setTrackId)(event.currentTarget.value)}
          />
          <NativeSelect
            label={texts.bike}
            data={named(bikes)}
            value={bikeId}
            onChange={(event) => changing(setBikeId)(event.currentTarget.value)}
          />
          <NativeSelect
            label={texts.condition}
            data={[...grounds]}
            value={condition}
            onChange={(event) => changing(setCondition)(event.currentTarget.value as Ground)}
          />
          <NumberField
            label={texts.positionSd}
            description={texts.positionSdHint}
            unit="m"
            value={positionSd}
            error={errors['positionSdM']}
            onText={changing(setPositionSd)}
          />
          <Failure error={preview.error} word={texts.notChecked} />
          <Group>
            <Button type="submit" variant="default" disabled={gpx === ''} loading={preview.isPending}>
              {texts.check}
            </Button>
          </Group>
        </Stack>
      </form>
      {preview.data !== undefined && !store.isSuccess && (
        <>
          <RecordedRuns preview={preview.data} />
          <Failure error={store.error} word={texts.notStored} />
          {preview.data.problems.length === 0 && (
            <Group>
              <Button loading={store.isPending} onClick={() => store.mutate(recording)}>
                {texts.store(formatCount(preview.data.runs.length, 'run'))}
              </Button>
            </Group>
          )}
        </>
      )}
      <Text role="status" fw={600}>
        {store.isSuccess && texts.stored(formatCount(store.data.runs.length, 'run'))}
      </Text>
    </Stack>
  );
}
