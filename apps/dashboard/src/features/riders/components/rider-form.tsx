import { Button, Fieldset, Group, Stack } from '@mantine/core';
import { useForm } from '@mantine/form';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import type { Rider } from '../../../shared/http/reads/riders.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { Fields } from '../../../shared/ui/form/fields.js';
import { obviousErrors } from '../../../shared/ui/form/field-spec.js';
import { useSaveRider } from '../api/save-rider.js';
import { riderMessage, riderValues } from '../model/rider-form.js';
import { FORK_FIELDS, RIDER_FIELDS, SHOCK_FIELDS, texts } from '../texts.js';

interface RiderFormProps {
  readonly teamId: string;
  readonly rider: Rider | undefined;
  readonly onSaved: () => void;
}

export function RiderForm({ teamId, rider, onSaved }: RiderFormProps) {
  const save = useSaveRider(teamId, rider);
  const form = useForm({
    initialValues: riderValues(rider),
    validate: (values) => obviousErrors([...RIDER_FIELDS, ...FORK_FIELDS, ...SHOCK_FIELDS], values),
  });
  const submit = form.onSubmit((values) =>
    save.mutate(riderMessage(values), {
      onSuccess: onSaved,
      onError: (error) => form.setErrors(fieldErrors(error)),
    }),
  );
  return (
    <form onSubmit={submit} noValidate>
      <Stack>
        <Fields fields={RIDER_FIELDS} form={form} />
        <Fieldset legend={texts.fork}>
          <Fields fields={FORK_FIELDS} form={form} />
        </Fieldset>
        <Fieldset legend={texts.shock}>
          <Fields fields={SHOCK_FIELDS} form={form} />
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
