import { Button, Group, Stack } from '@mantine/core';
import { useForm } from '@mantine/form';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { Fields } from '../../../shared/ui/form/fields.js';
import { obviousErrors } from '../../../shared/ui/form/field-spec.js';
import { useEnterCare, type UnitService } from '../api/unit-service.js';
import { careMessage, careValues } from '../model/entry-form.js';
import { CARE_FIELDS, texts } from '../texts.js';

interface CareFormProps {
  readonly teamId: string;
  readonly service: UnitService;
}

/** What the unit's manual says: the team enters it, nobody guesses it. */
export function CareForm({ teamId, service }: CareFormProps) {
  const enter = useEnterCare(teamId, service.unitId);
  const form = useForm({
    initialValues: careValues(service),
    validate: (values) => obviousErrors(CARE_FIELDS, values),
  });
  const submit = form.onSubmit((values) =>
    enter.mutate(careMessage(values), { onError: (error) => form.setErrors(fieldErrors(error)) }),
  );
  return (
    <form onSubmit={submit} noValidate>
      <Stack>
        <Fields fields={CARE_FIELDS} form={form} />
        <Failure error={enter.error} />
        <Group>
          <Button type="submit" variant="default" loading={enter.isPending}>
            {texts.saveCare}
          </Button>
        </Group>
      </Stack>
    </form>
  );
}
