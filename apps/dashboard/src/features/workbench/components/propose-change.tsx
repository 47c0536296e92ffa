import { Button, Group, Stack, Text, Textarea } from '@mantine/core';
import { useState } from 'react';
import { fieldErrors } from '../../../shared/http/problem.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { TextLink } from '../../../shared/ui/link.js';
import { Warning } from '../../../shared/ui/note.js';
import type { useProposeChange } from '../api/propose-change.js';
import { isStale } from '../model/change.js';
import { texts } from '../texts.js';

interface ProposeChangeProps {
  readonly teamId: string;
  readonly bikeId: string;
  readonly sending: ReturnType<typeof useProposeChange>;
  /** Why nothing can be proposed yet; null where it can. */
  readonly hindrance: string | null;
  /** Refusals of fields that are not in sight. */
  readonly elsewhere: readonly string[];
  readonly onSend: (words: { reason: string; note: string }, onSaved: () => void) => void;
  readonly onLookAgain: () => void;
}

/** From the bench into the records: with a reason, as the bike's next set-up and an open decision. */
export function ProposeChange(props: ProposeChangeProps) {
  const { teamId, bikeId, sending, hindrance, elsewhere, onSend, onLookAgain } = props;
  const [reason, setReason] = useState('');
  const [note, setNote] = useState('');
  const [missing, setMissing] = useState<string | null>(null);
  const refused = fieldErrors(sending.error);
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
      {isStale(sending.error) ? (
        <Warning word={texts.changedMeanwhileWord} urgent>
          {sending.error.message} {texts.stale}
          <div>
            <Button variant="default" mt="xs" onClick={onLookAgain}>
              {texts.lookAgain}
            </Button>
          </div>
        </Warning>
      ) : (
        <Failure error={sending.error} word={texts.notProposed} />
      )}
      {elsewhere.map((line) => (
        <Text key={line} size="sm">
          {line}
        </Text>
      ))}
      <Group gap="md">
        <Button loading={sending.isPending} onClick={send}>
          {texts.propose}
        </Button>
        <Text role="status">
          {sending.data !== undefined && (
            <>
              {texts.saved(sending.data.revision)}{' '}
              <TextLink to="/teams/$teamId/bikes/$bikeId" params={{ teamId, bikeId }}>
                {texts.toDecision}
              </TextLink>
            </>
          )}
        </Text>
      </Group>
    </Stack>
  );
}
