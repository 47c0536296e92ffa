import { Button, Group, Stack, Text } from '@mantine/core';
import { useForm } from '@mantine/form';
import { massText } from '../../../shared/format/quantities.js';
import { pressureText, temperatureText } from '../../../shared/format/numbers.js';
import { ChoiceRow } from '../../../shared/ui/choice-row.js';
import { Failure } from '../../../shared/ui/error-view.js';
import type { Account } from '../api/account.js';
import { useChooseUnits, type ChosenUnits } from '../api/choose-units.js';
import { texts, UNIT_FIELDS } from '../unit-texts.js';

interface UnitsFormProps {
  readonly units: Account['units'];
  readonly onSaved: () => void;
}

/** A fork, a rider and a day. */
const EXAMPLE = { psi: 71, kg: 82, celsius: 18 };

/** The units in which the signed-in person reads and types. */
export function UnitsForm({ units: { version, ...units }, onSaved }: UnitsFormProps) {
  const choose = useChooseUnits(version);
  const form = useForm<ChosenUnits>({ initialValues: units });
  return (
    <form onSubmit={form.onSubmit((values) => choose.mutate(values, { onSuccess: onSaved }))} noValidate>
      <Stack maw="24rem">
        {UNIT_FIELDS.map(({ name, label, choices }) => (
          <ChoiceRow
            key={name}
            label={label}
            choices={choices.map((unit) => ({ value: unit, label: unit }))}
            value={form.values[name]}
            onChange={(unit) => form.setFieldValue(name, unit as never)}
          />
        ))}
        <Failure error={choose.error} />
        <Group>
          <Button type="submit" loading={choose.isPending}>
            {texts.save}
          </Button>
        </Group>
        <Text size="sm" c="dimmed" role="status">
          {texts.example([pressureText(EXAMPLE.psi), massText(EXAMPLE.kg), temperatureText(EXAMPLE.celsius)])}
        </Text>
      </Stack>
    </form>
  );
}
