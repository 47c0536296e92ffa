import { Button, Group, Stack, Textarea } from '@mantine/core';
import { useState } from 'react';
import { fieldErrors } from '../../http/field-errors.js';
import { Failure } from '../error-view.js';
import { texts } from '../texts.js';

interface AskWhyProps {
  /** What the act is called on its button. */
  readonly label: string;
  /** What it is called for who cannot see where the button stands. */
  readonly fullLabel?: string;
  /** What happens, in a sentence. */
  readonly lead?: string;
  readonly why: string;
  readonly error: Error | null;
  readonly isPending: boolean;
  /** The field of the message that holds the reason. */
  readonly field: string;
  readonly onSure: (why: string, done: () => void) => void;
}

/** An act that is recorded with its reason: asks for it before it acts. */
export function AskWhy({ label, fullLabel, lead, why, error, isPending, field, onSure }: AskWhyProps) {
  const [isAsking, setIsAsking] = useState(false);
  const [reason, setReason] = useState('');
  if (!isAsking) {
    return (
      <Button variant="default" aria-label={fullLabel} onClick={() => setIsAsking(true)}>
        {label}
      </Button>
    );
  }
  const done = () => {
    setIsAsking(false);
    setReason('');
  };
  return (
    <Stack gap="sm" w="100%" maw="32rem">
      <Textarea
        label={why}
        description={lead}
        autosize
        autoFocus
        withAsterisk
        aria-required
        value={reason}
        onChange={(event) => setReason(event.currentTarget.value)}
        error={fieldErrors(error)[field]}
      />
      <Failure error={error} />
      <Group gap="sm">
        <Button loading={isPending} onClick={() => onSure(reason, done)}>
          {label}
        </Button>
        <Button variant="default" onClick={done}>
          {texts.leaveIt}
        </Button>
      </Group>
    </Stack>
  );
}
