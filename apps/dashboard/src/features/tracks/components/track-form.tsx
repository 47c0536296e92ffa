import { Button, Fieldset, Group, Stack, Text } from '@mantine/core';
import { useForm } from '@mantine/form';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import type { Track } from '../../../shared/http/reads/tracks.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { Fields } from '../../../shared/ui/form/fields.js';
import { obviousErrors } from '../../../shared/ui/form/field-spec.js';
import { useSaveTrack } from '../api/save-track.js';
import { gateErrors, gateFormErrors } from '../model/gates.js';
import { trackMessage, trackValues } from '../model/track-form.js';
import { GATE_FIELDS, gateTexts, texts, TRACK_FIELDS } from '../texts.js';

interface TrackFormProps {
  readonly teamId: string;
  readonly track: Track | undefined;
  readonly onSaved: () => void;
}

export function TrackForm({ teamId, track, onSaved }: TrackFormProps) {
  const save = useSaveTrack(teamId, track);
  const form = useForm({
    initialValues: trackValues(track),
    validate: ({ startGate, finishGate, ...values }) => ({
      ...obviousErrors(TRACK_FIELDS, values),
      ...gateErrors('startGate', startGate),
      ...gateErrors('finishGate', finishGate),
    }),
  });
  const submit = form.onSubmit((values) =>
    save.mutate(trackMessage(values, track), {
      onSuccess: onSaved,
      onError: (error) => form.setErrors(gateFormErrors(fieldErrors(error))),
    }),
  );
  return (
    <form onSubmit={submit} noValidate>
      <Stack>
        <Fields fields={TRACK_FIELDS} form={form} />
        <Fieldset legend={gateTexts.title}>
          <Text size="sm" c="dimmed" mb="md">
            {gateTexts.lead}
          </Text>
          <Fields fields={GATE_FIELDS} form={form} />
        </Fieldset>
        <Failure error={save.error} />
        <Group>
          <Button type="submit" loading={save.isPending}>
            {texts.save}
          </Button>
        </Group>
      </Stack>
    </form>
  );
}
