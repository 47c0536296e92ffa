import { Button, Group, Stack, Text, Textarea } from '@mantine/core';
import { useState } from 'react';
import { formatDay } from '../../../shared/format/time.js';
import { fieldErrors } from '../../../shared/http/problem.js';
import type { Decision } from '../../../shared/http/reads/decisions.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { useEnterOutcome } from '../api/enter-outcome.js';
import { useRestoreSetup } from '../api/restore-setup.js';
import { texts } from '../texts.js';
import { ExpectedTable } from './expected-table.js';

interface OpenDecisionProps {
  readonly teamId: string;
  readonly decision: Decision;
  readonly canDecide: boolean;
}

/** The last change while nobody has said what came of it: why, what was expected, and the two ways on. */
export function OpenDecision({ teamId, decision, canDecide }: OpenDecisionProps) {
  const enter = useEnterOutcome(teamId, decision);
  const restore = useRestoreSetup(teamId);
  const [note, setNote] = useState('');
  const back = decision.fromSetupId;
  const error = enter.error ?? restore.error;
  return (
    <Stack gap="sm" maw="44rem">
      <Text>
        {formatDay(decision.decidedAt)}: “{decision.reason}”
      </Text>
      {decision.expected !== null && <ExpectedTable expected={decision.expected} />}
      {canDecide && (
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
      )}
    </Stack>
  );
}
