import { Button, Group, Text, Textarea } from '@mantine/core';
import { useState } from 'react';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import type { Decision } from '../../../shared/http/reads/decisions.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { useEnterOutcome } from '../api/enter-outcome.js';
import { useRestoreSetup } from '../api/restore-setup.js';
import { texts } from '../texts.js';

interface EnterOutcomeProps {
  readonly teamId: string;
  readonly decision: Decision;
  /** Whether who looks may change the bike's set-up. */
  readonly canTakeBack: boolean;
}

/** What came of a decision: keep it, or take it back. */
export function EnterOutcome({ teamId, decision, canTakeBack }: EnterOutcomeProps) {
  const enter = useEnterOutcome(teamId, decision);
  const restore = useRestoreSetup(teamId);
  const [note, setNote] = useState('');
  const back = canTakeBack ? decision.fromSetupId : null;
  const error = enter.error ?? restore.error;
  return (
    <>
      <Textarea
        label={texts.outcomeNote}
        autosize
        minRows={2}
        value={note}
        onChange={(event) => setNote(event.currentTarget.value)}
        error={fieldErrors(error)['note'] ?? fieldErrors(error)['reason']}
      />
      <Failure error={error} />
      <Group gap="sm">
        <Button loading={enter.isPending} onClick={() => enter.mutate({ outcome: 'kept', note })}>
          {texts.kept}
        </Button>
        {back !== null && (
          <Button
            variant="default"
            loading={restore.isPending}
            onClick={() => restore.mutate({ setupId: back, reason: note })}
          >
            {texts.takeBack}
          </Button>
        )}
      </Group>
      {back !== null && (
        <Text size="sm" c="dimmed">
          {texts.takeBackLead}
        </Text>
      )}
    </>
  );
}
