import { Button, Fieldset, Group, Stack, Text } from '@mantine/core';
import { useForm } from '@mantine/form';
import { pressureRangeText } from '../../../shared/format/quantities.js';
import { formatCount } from '../../../shared/format/numbers.js';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import type { Setup } from '../../../shared/http/reads/setups.js';
import { hasLimits, type SpringUnit } from '../../../shared/http/reads/spring-units.js';
import type { Track } from '../../../shared/http/reads/tracks.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { Fields } from '../../../shared/ui/form/fields.js';
import { obviousErrors, type FieldSpec } from '../../../shared/ui/form/field-spec.js';
import { Warning } from '../../../shared/ui/note.js';
import { useCreateSetup } from '../api/create-setup.js';
import { NO_ORIGIN, setupMessage, setupValues, type SetupOrigin } from '../model/setup-form.js';
import { FILL_FIELDS, FORK_FIELDS, SHOCK_FIELDS, texts, WHY_FIELDS } from '../texts.js';

interface SetupFormProps {
  readonly teamId: string;
  readonly bikeId: string;
  /** The set-up that the form starts from: what is in the bike, or one ridden before. */
  readonly start: Setup | undefined;
  readonly origin?: SetupOrigin;
  readonly fork: SpringUnit | undefined;
  readonly shock: SpringUnit | undefined;
  readonly tracks: readonly Track[];
  readonly onSaved: () => void;
}

const trackField = (tracks: readonly Track[]): FieldSpec => ({
  name: 'trackId',
  label: 'For a track',
  kind: 'choice',
  choices: [{ value: '', label: 'for all' }, ...tracks.map(({ id, name }) => ({ value: id, label: name }))],
});

export function SetupForm(props: SetupFormProps) {
  const { teamId, bikeId, start, origin = NO_ORIGIN, fork, shock, tracks, onSaved } = props;
  const create = useCreateSetup(teamId);
  const shockFields = shock === undefined ? [] : SHOCK_FIELDS;
  const form = useForm({
    initialValues: setupValues(start, origin),
    validate: (values) =>
      obviousErrors([...FORK_FIELDS, ...shockFields, ...FILL_FIELDS, ...WHY_FIELDS], values),
  });
  const submit = form.onSubmit((values) =>
    create.mutate(setupMessage(bikeId, shock !== undefined, values, origin), {
      onSuccess: onSaved,
      onError: (error) => form.setErrors(fieldErrors(error)),
    }),
  );
  return (
    <form onSubmit={submit} noValidate>
      <Stack>
        <Fieldset legend={texts.fork}>
          <Limits unit={fork} />
          <Fields fields={FORK_FIELDS} form={form} />
        </Fieldset>
        {shock !== undefined && (
          <Fieldset legend={texts.shock}>
            <Limits unit={shock} />
            <Fields fields={SHOCK_FIELDS} form={form} />
          </Fieldset>
        )}
        <Fieldset legend={texts.whyTitle}>
          <Fields fields={[...WHY_FIELDS, trackField(tracks)]} form={form} />
        </Fieldset>
        <Fieldset legend={texts.fillTitle}>
          <Fields fields={FILL_FIELDS} form={form} />
        </Fieldset>
        <Failure error={create.error} />
        <Group>
          <Button type="submit" loading={create.isPending}>
            {texts.save}
          </Button>
        </Group>
      </Stack>
    </form>
  );
}

function Limits({ unit }: { unit: SpringUnit | undefined }) {
  if (unit === undefined) return null;
  if (!hasLimits(unit)) return <Warning word={texts.noLimitsWord}>{texts.noLimits}</Warning>;
  const range = pressureRangeText(unit.minPressurePsi, unit.maxPressurePsi);
  return (
    <Text size="sm" c="dimmed" mb="sm">
      {texts.limits(range, formatCount(unit.maxSpacers ?? 0, 'spacer'))}
    </Text>
  );
}
