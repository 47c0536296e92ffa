import { Button, Group, Stack, Text, Textarea } from '@mantine/core';
import { memo, useState } from 'react';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { TextLink } from '../../../shared/ui/link.js';
import { Warning } from '../../../shared/ui/note.js';
import type { Setup } from '../../../shared/http/reads/setups.js';
import { isStale, refusalsElsewhere } from '../model/change.js';
import { texts } from '../texts.js';

interface ProposeChangeProps {
  readonly teamId: string;
  readonly bikeId: string;
  readonly isPending: boolean;
  /** The set-up that was saved last from this bench. */
  readonly saved: Setup | undefined;
  readonly error: Error | null;
  /** Why nothing can be proposed yet; null where it can. */
  readonly hindrance: string | null;
  /** The end in sight, whose refusals stand at its fields. */
  readonly shown: 'fork' | 'shock';
  readonly onSend: (words: { reason: string; note: string }, onSaved: () => void) => void;
  readonly onReset: () => void;
  /** Reads again what is in the bike. */
  readonly onLookAgain: () => void;
}

/** From the bench into the records: with a reason, as the bike's next set-up and an open decision. */
export const ProposeChange = memo(function ProposeChange(props: ProposeChangeProps) {
  const { teamId, bikeId, isPending, saved, error, hindrance, shown, onSend, onReset, onLookAgain } = props;
  const [reason, setReason] = useState('');
  const [note, setNote] = useState('');
  const [missing, setMissing] = useState<string | null>(null);
  const refused = fieldErrors(error);
  const send = () => {
    const lacking = hindrance ?? (reason.trim() === '' ? texts.needed : null);
    setMissing(lacking);
    if (lacking !== null) return;
    onSend({ reason, note }, () => {
      setReason('');
      setNote('');
    });
  };
  return (
    <Stack gap="sm" maw="44rem">
      <Text c="dimmed">{texts.proposeLead}</Text>
      <Textarea
        label={texts.reason}
        description={texts.reasonHint}
        withAsterisk
        aria-required
        rows={2}
        value={reason}
        onChange={(event) => {
          setReason(event.currentTarget.value);
          setMissing(null);
        }}
        error={missing === texts.needed ? missing : refused['reason']}
      />
      <Textarea
        label={texts.note}
        rows={2}
        value={note}
        onChange={(event) => setNote(event.currentTarget.value)}
        error={refused['note']}
      />
      {hindrance !== null && missing === hindrance && (
        <Warning word={`${texts.notProposed}.`} urgent>
          {hindrance}
        </Warning>
      )}
      {isStale(error) ? (
        <Warning word={texts.changedMeanwhileWord} urgent>
          {error.message} {texts.stale}
          <div>
            <Button
              variant="default"
              mt="xs"
              onClick={() => {
                onReset();
                onLookAgain();
              }}
            >
              {texts.lookAgain}
            </Button>
          </div>
        </Warning>
      ) : (
        <Failure error={error} word={texts.notProposed} />
      )}
      {refusalsElsewhere(error, shown).map((line) => (
        <Text key={line} size="sm">
          {line}
        </Text>
      ))}
      <Group gap="md">
        <Button loading={isPending} onClick={send}>
          {texts.propose}
        </Button>
        <Text role="status">
          {saved !== undefined && (
            <>
              {texts.saved(saved.revision)}{' '}
              <TextLink to="/teams/$teamId/bikes/$bikeId" params={{ teamId, bikeId }}>
                {texts.toDecision}
              </TextLink>
            </>
          )}
        </Text>
      </Group>
    </Stack>
  );
});
