import { Button, Group, Stack, Text, Textarea } from '@mantine/core';
import { useState } from 'react';
import { formatCount } from '../../../shared/format/numbers.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { useClosePlan } from '../api/ride-plan.js';
import type { Plan } from '../api/plans.js';
import { progressOf } from '../model/order.js';
import { texts } from '../texts.js';

interface ClosePlanProps {
  readonly teamId: string;
  readonly plan: Plan;
  /** The plan is being read again, as after a run that was just logged: what was read before cannot be closed any more. */
  readonly isReading: boolean;
}

/** Closes a plan, after it has asked: it is not opened again. */
export function ClosePlan({ teamId, plan, isReading }: ClosePlanProps) {
  const [asking, setAsking] = useState(false);
  const [note, setNote] = useState('');
  const closing = useClosePlan(teamId, plan.id, plan.version);
  const { ridden, all } = progressOf(plan.riders);
  if (!asking) {
    return (
      <div>
        <Button variant={ridden === all ? 'filled' : 'default'} onClick={() => setAsking(true)}>
          {texts.close}
        </Button>
      </div>
    );
  }
  return (
    <Stack gap="sm" maw="32rem" role="group" aria-label={texts.closeTitle}>
      <Text>{texts.closeLead}</Text>
      {ridden < all && <Text fw={600}>{texts.closeEarly(formatCount(all - ridden, 'run'))}</Text>}
      <Textarea
        label={texts.closeNote}
        autosize
        autoFocus
        value={note}
        onChange={(event) => setNote(event.currentTarget.value)}
      />
      <Failure error={closing.error} word={texts.notClosed} />
      <Group gap="sm">
        <Button loading={closing.isPending || isReading} onClick={() => closing.mutate(note)}>
          {texts.yesClose}
        </Button>
        <Button variant="default" onClick={() => setAsking(false)}>
          {texts.leave}
        </Button>
      </Group>
    </Stack>
  );
}
