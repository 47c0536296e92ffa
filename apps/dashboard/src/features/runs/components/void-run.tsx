import { Button, Checkbox, Group, Stack, Textarea } from '@mantine/core';
import { useState } from 'react';
import { fieldErrors } from '../../../shared/http/problem.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { useVoidRun } from '../api/void-run.js';
import { texts } from '../texts.js';

interface VoidRunProps {
  readonly teamId: string;
  readonly runId: string;
}

/** Asks why before it takes a run out of the times. */
export function VoidRun({ teamId, runId }: VoidRunProps) {
  const [asking, setAsking] = useState(false);
  const [reason, setReason] = useState('');
  const [readingsCount, setReadingsCount] = useState(false);
  const voiding = useVoidRun(teamId, runId);
  if (!asking) {
    return (
      <Button variant="subtle" onClick={() => setAsking(true)}>
        {texts.void}
      </Button>
    );
  }
  return (
    <Stack gap="sm" miw="16rem" role="group" aria-label={texts.voidTitle}>
      <Textarea
        label={texts.voidReason}
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
        <Button loading={voiding.isPending} onClick={() => voiding.mutate({ reason, readingsCount })}>
          {texts.yesVoid}
        </Button>
        <Button variant="default" onClick={() => setAsking(false)}>
          {texts.cancel}
        </Button>
      </Group>
    </Stack>
  );
}
