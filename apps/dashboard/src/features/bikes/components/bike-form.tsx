import { Button, Fieldset, Group, NativeSelect, Stack, Text } from '@mantine/core';
import { useForm } from '@mantine/form';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import type { Bike } from '../../../shared/http/reads/bikes.js';
import type { Rider } from '../../../shared/http/reads/riders.js';
import type { SpringUnit } from '../../../shared/http/reads/spring-units.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { Fields } from '../../../shared/ui/form/fields.js';
import { obviousErrors, type FieldSpec } from '../../../shared/ui/form/field-spec.js';
import { useSaveBike } from '../api/save-bike.js';
import { bikeMessage, bikeValues, formErrors, newBikeValues, type BikeValues } from '../model/bike-form.js';
import { GENERIC_FRAMES, withFrame } from '../model/generic-frames.js';
import { readLeverage } from '../model/leverage.js';
import { FRAME_FIELDS, LEVERAGE_FIELDS, SOURCE_FIELDS, STANCE_FIELDS, texts } from '../texts.js';

interface BikeFormProps {
  readonly teamId: string;
  readonly bike: Bike | undefined;
  readonly riders: readonly Rider[];
  readonly units: readonly SpringUnit[];
  readonly onSaved: () => void;
}

const choicesOf = (things: readonly { id: string; name: string }[]) =>
  things.map(({ id, name }) => ({ value: id, label: name }));

/** The fields that name other things of the team. */
function partFields(riders: readonly Rider[], units: readonly SpringUnit[]): FieldSpec[] {
  const unitsOf = (kind: SpringUnit['kind']) => choicesOf(units.filter((unit) => unit.kind === kind));
  const choose = { value: '', label: texts.choose };
  return [
    { name: 'name', label: 'Name', kind: 'text', required: true },
    {
      name: 'riderId',
      label: texts.rider,
      kind: 'choice',
      required: true,
      choices: [choose, ...choicesOf(riders)],
    },
    {
      name: 'category',
      label: texts.category,
      kind: 'choice',
      choices: choicesOf(['trail', 'enduro', 'downhill'].map((name) => ({ id: name, name }))),
    },
    {
      name: 'forkUnitId',
      label: texts.fork,
      kind: 'choice',
      required: true,
      choices: [choose, ...unitsOf('fork')],
    },
    {
      name: 'shockUnitId',
      label: texts.shock,
      kind: 'choice',
      choices: [{ value: '', label: texts.noShock }, ...unitsOf('shock')],
    },
  ];
}

function leverageErrors({ leverageTable }: BikeValues): Record<string, string> {
  const read = readLeverage(leverageTable);
  return 'badLine' in read ? { leverageTable: texts.badLine(read.badLine) } : {};
}

export function BikeForm({ teamId, bike, riders, units, onSaved }: BikeFormProps) {
  const save = useSaveBike(teamId, bike);
  const parts = partFields(riders, units);
  const form = useForm<BikeValues>({
    initialValues: bike === undefined ? newBikeValues(riders, units) : bikeValues(bike),
    validate: (values) => ({
      ...obviousErrors([...parts, ...FRAME_FIELDS, ...STANCE_FIELDS], values),
      ...leverageErrors(values),
    }),
  });
  const stroke = units.find(({ id }) => id === form.values.shockUnitId)?.strokeMm ?? null;
  const submit = form.onSubmit((values) =>
    save.mutate(bikeMessage(values), {
      onSuccess: onSaved,
      onError: (error) => form.setErrors(formErrors(fieldErrors(error))),
    }),
  );
  return (
    <form onSubmit={submit} noValidate>
      <Stack>
        <Fields fields={parts} form={form} />
        {bike === undefined && (
          <NativeSelect
            label={texts.start}
            description={texts.startHint}
            maw="32rem"
            data={[
              { value: '', label: texts.startNone },
              ...GENERIC_FRAMES.map(({ category, label }) => ({ value: category, label })),
            ]}
            onChange={(event) => form.setValues(withFrame(form.values, event.currentTarget.value, stroke))}
          />
        )}
        <Fieldset legend={texts.frame}>
          <Fields fields={FRAME_FIELDS} form={form} />
        </Fieldset>
        <Fields fields={LEVERAGE_FIELDS} form={form} />
        <Fieldset legend={texts.stance}>
          <Text size="sm" c="dimmed" mb="md">
            {texts.stanceHint}
          </Text>
          <Fields fields={STANCE_FIELDS} form={form} />
        </Fieldset>
        <Fieldset legend={texts.sources}>
          <Fields fields={SOURCE_FIELDS} form={form} />
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
