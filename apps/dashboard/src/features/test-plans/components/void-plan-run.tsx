import { Button, Checkbox, Group, Stack, Textarea } from '@mantine/core';
import { useState } from 'react';
import { fieldErrors } from '../../../shared/http/problem.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { useVoidPlanRun } from '../api/ride-plan.js';
import { texts } from '../texts.js';
import classes from './plans.module.css';

interface VoidPlanRunProps {
  readonly teamId: string;
  readonly planId: string;
  readonly runId: string;
  readonly position: number;
}

/** Asks why before it takes a run out of the times; the rest is ordered anew. */
export function VoidPlanRun({ teamId, planId, runId, position }: VoidPlanRunProps) {
  const [asking, setAsking] = useState(false);
  const [reason, setReason] = useState('');
  const [readingsCount, setReadingsCount] = useState(false);
  const voiding = useVoidPlanRun(teamId, planId);
  if (!asking) {
    return (
      <Button
        className="ll-screen-only"
        variant="subtle"
        aria-label={texts.voidRun(position)}
        onClick={() => setAsking(true)}
      >
        {texts.void}
      </Button>
    );
  }
  return (
    <Stack gap="sm" className={classes.whole} role="group" aria-label={texts.voidRun(position)}>
      <Textarea
        label={texts.voidReason}
        description={texts.voidLead}
        autosize
        autoFocus
        value={reason}
        onChange={(event) => setReason(event.currentTarget.value)}
        error={fieldErrors(voiding.error)['reason']}
      />
      <Checkbox
        label={texts.readingsCount}
        checked={readingsCount}
        onChange={(event) => setReadingsCount(event.currentTarget.checked)}
      />
      <Failure error={voiding.error} word={texts.notVoided} />
      <Group gap="sm">
        <Button loading={voiding.isPending} onClick={() => voiding.mutate({ runId, reason, readingsCount })}>
          {texts.yesVoid}
        </Button>
        <Button variant="default" onClick={() => setAsking(false)}>
          {texts.leave}
        </Button>
      </Group>
    </Stack>
  );
}
