import { Button, Group, Radio, Stack, Text, TextInput } from '@mantine/core';
import { useState } from 'react';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import type { Baseline } from '../../../shared/http/reads/baselines.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { useTakeBaseline } from '../api/take-baseline.js';
import { canBeTaken, hasSteps, isInBike } from '../model/fill-text.js';
import { texts } from '../texts.js';

interface TakeBaselineProps {
  readonly teamId: string;
  readonly baseline: Baseline;
}

/** Takes the baseline into the bike's records; a long way is offered in steps. */
export function TakeBaseline({ teamId, baseline }: TakeBaselineProps) {
  const [asking, setAsking] = useState(false);
  const [reason, setReason] = useState('');
  const [way, setWay] = useState('first');
  const take = useTakeBaseline(teamId, baseline.id);
  if (!asking) {
    return (
      <Group gap="md">
        {canBeTaken(baseline) && <Button onClick={() => setAsking(true)}>{texts.take}</Button>}
        {isInBike(baseline) && <Text c="dimmed">{texts.already}</Text>}
        <Text role="status">{take.isSuccess && texts.taken}</Text>
      </Group>
    );
  }
  const message = {
    ...(reason.trim() !== '' && { reason }),
    wholeWay: !hasSteps(baseline) || way === 'whole',
  };
  return (
    <Stack gap="sm" maw="32rem" role="group" aria-label={texts.takeTitle}>
      <Text size="sm">{texts.takeLead}</Text>
      {hasSteps(baseline) && (
        <Radio.Group value={way} onChange={setWay} aria-label={texts.steps}>
          <Stack gap="xs">
            <Radio value="first" label={texts.firstStep} />
            <Radio value="whole" label={texts.wholeWay} />
          </Stack>
        </Radio.Group>
      )}
      <TextInput
        label={texts.takeReason}
        value={reason}
        onChange={(event) => setReason(event.currentTarget.value)}
        error={fieldErrors(take.error)['reason']}
      />
      <Failure error={take.error} word={texts.notTaken} />
      <Group gap="sm">
        <Button
          loading={take.isPending}
          onClick={() => take.mutate(message, { onSuccess: () => setAsking(false) })}
        >
          {texts.yesTake}
        </Button>
        <Button variant="default" onClick={() => setAsking(false)}>
          {texts.cancel}
        </Button>
      </Group>
    </Stack>
  );
}
