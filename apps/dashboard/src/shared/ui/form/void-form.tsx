import { Button, Checkbox, Group, Stack, Textarea } from '@mantine/core';
import { useState } from 'react';
import { fieldErrors } from '../../http/field-errors.js';
import { Failure } from '../error-view.js';
import { voidTexts as texts } from './void-texts.js';

/** Why a run is taken out of the times, and whether its rings still tell about the track. */
interface VoidAnswer {
  readonly reason: string;
  readonly readingsCount: boolean;
}

interface VoidFormProps {
  /** Names the run, for who does not see where the form stands. */
  readonly label: string;
  readonly lead?: string;
  readonly className?: string | undefined;
  readonly error: Error | null;
  readonly isPending: boolean;
  readonly onVoid: (answer: VoidAnswer) => void;
}

/** Asks why before a run is taken out of the times. */
export function VoidForm({ label, lead, className, error, isPending, onVoid }: VoidFormProps) {
  const [asking, setAsking] = useState(false);
  const [reason, setReason] = useState('');
  const [readingsCount, setReadingsCount] = useState(false);
  if (!asking) {
    return (
      <Button className="ll-screen-only" variant="subtle" aria-label={label} onClick={() => setAsking(true)}>
        {texts.void}
      </Button>
    );
  }
  return (
    <Stack gap="sm" miw="min(100%, 16rem)" className={className} role="group" aria-label={label}>
      <Textarea
        label={texts.reason}
        description={lead}
        autosize
        autoFocus
        value={reason}
        onChange={(event) => setReason(event.currentTarget.value)}
        error={fieldErrors(error)['reason']}
      />
      <Checkbox
        label={texts.readingsCount}
        checked={readingsCount}
        onChange={(event) => setReadingsCount(event.currentTarget.checked)}
      />
      <Failure error={error} word={texts.notVoided} />
      <Group gap="sm">
        <Button loading={isPending} onClick={() => onVoid({ reason, readingsCount })}>
          {texts.yes}
        </Button>
        <Button variant="default" onClick={() => setAsking(false)}>
          {texts.leave}
        </Button>
      </Group>
    </Stack>
  );
}
