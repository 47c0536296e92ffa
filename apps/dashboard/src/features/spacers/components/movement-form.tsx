import { Button, Group, NativeSelect, Stack } from '@mantine/core';
import { useForm } from '@mantine/form';
import { formatNumber } from '../../../shared/format/numbers.js';
import { parseNumber } from '../../../shared/format/parse.js';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { Fields } from '../../../shared/ui/form/fields.js';
import { obviousErrors } from '../../../shared/ui/form/field-spec.js';
import { useMoveSpacers, type SpacerMovement, type SpacerStock } from '../api/spacers.js';
import { MOVEMENT_FIELDS, texts } from '../texts.js';

interface MovementFormProps {
  readonly teamId: string;
  readonly stocks: readonly SpacerStock[];
}

type HandReason = Exclude<SpacerMovement['reason'], 'reversed'>;

export function MovementForm({ teamId, stocks }: MovementFormProps) {
  const move = useMoveSpacers(teamId);
  const form = useForm({
    initialValues: { size: '0', reason: 'counted', spacers: '', note: '' },
    validate: (values) => obviousErrors(MOVEMENT_FIELDS, values),
  });
  const submit = form.onSubmit(({ size, reason, spacers, note }) => {
    const stock = stocks[Number(size)];
    if (stock === undefined) return;
    const { unitKind, spacerVolumeMl } = stock;
    const message = {
      unitKind,
      spacerVolumeMl,
      reason: reason as HandReason,
      // An empty figure becomes NaN, which JSON carries as null and the API refuses at that field.
      spacers: parseNumber(spacers) ?? Number.NaN,
      note,
    };
    move.mutate(message, {
      onSuccess: () => form.setValues({ spacers: '', note: '' }),
      onError: (error) => form.setErrors(fieldErrors(error)),
    });
  });
  return (
    <form onSubmit={submit} noValidate>
      <Stack>
        <NativeSelect
          label={texts.size}
          maw="32rem"
          data={stocks.map(({ unitKind, spacerVolumeMl }, place) => ({
            value: String(place),
            label: texts.sizeOf(unitKind, formatNumber(spacerVolumeMl, 1)),
          }))}
          {...form.getInputProps('size')}
        />
        <Fields fields={MOVEMENT_FIELDS} form={form} />
        <Failure error={move.error} />
        <Group>
          <Button type="submit" loading={move.isPending}>
            {texts.save}
          </Button>
        </Group>
      </Stack>
    </form>
  );
}
