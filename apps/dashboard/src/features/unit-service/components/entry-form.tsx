import { Button, Group, Stack } from '@mantine/core';
import { useForm } from '@mantine/form';
import { localDay } from '../../../shared/format/time.js';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { Fields } from '../../../shared/ui/form/fields.js';
import { obviousErrors } from '../../../shared/ui/form/field-spec.js';
import { useEnterService } from '../api/unit-service.js';
import { entryMessage, entryValues } from '../model/entry-form.js';
import { ENTRY_FIELDS, NOTE_FIELD, RIDING_FIELD, texts } from '../texts.js';

interface EntryFormProps {
  readonly teamId: string;
  readonly unitId: string;
  /** The name of who is signed in: most often they have done it. */
  readonly doneBy: string;
}

export function EntryForm({ teamId, unitId, doneBy }: EntryFormProps) {
  const enter = useEnterService(teamId, unitId);
  const initialValues = entryValues(localDay(new Date()), doneBy);
  const fieldsOf = (kind: string) => [
    ...ENTRY_FIELDS,
    ...(kind === 'hours' ? [RIDING_FIELD] : []),
    NOTE_FIELD,
  ];
  const form = useForm({
    initialValues,
    validate: (values) => obviousErrors(fieldsOf(values.kind), values),
  });
  const submit = form.onSubmit((values) =>
    enter.mutate(entryMessage(values), {
      onSuccess: () => form.reset(),
      onError: (error) => form.setErrors(fieldErrors(error)),
    }),
  );
  return (
    <form onSubmit={submit} noValidate>
      <Stack>
        <Fields fields={fieldsOf(form.values.kind)} form={form} />
        <Failure error={enter.error} />
        <Group>
          <Button type="submit" loading={enter.isPending}>
            {texts.save}
          </Button>
        </Group>
      </Stack>
    </form>
  );
}
