import { Button, Group, Stack, Text } from '@mantine/core';
import { useState } from 'react';
import { formatMoment } from '../../../shared/format/time.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { useRevokeToken, type Token } from '../api/tokens.js';
import { texts } from '../texts.js';

interface TokenListProps {
  readonly teamId: string;
  readonly tokens: readonly Token[];
}

export function TokenList({ teamId, tokens }: TokenListProps) {
  return (
    <Stack gap="lg" maw="48rem">
      {tokens.map((token) => (
        <Group key={token.id} justify="space-between" align="start">
          <div>
            <Text fw={600}>{token.name}</Text>
            <Text size="sm">{token.scopes.map((scope) => texts.scope[scope]).join('; ')}</Text>
            <Text size="sm" c="dimmed">
              {texts.made} {formatMoment(token.createdAt)} · {texts.lastUsed}{' '}
              {token.lastUsedAt === null ? texts.never : formatMoment(token.lastUsedAt)}
            </Text>
          </div>
          <RevokeToken teamId={teamId} id={token.id} />
        </Group>
      ))}
    </Stack>
  );
}

/** Asks before it acts. */
function RevokeToken({ teamId, id }: { teamId: string; id: string }) {
  const [asking, setAsking] = useState(false);
  const revoke = useRevokeToken(teamId);
  if (!asking) {
    return (
      <Button variant="default" onClick={() => setAsking(true)}>
        {texts.revoke}
      </Button>
    );
  }
  return (
    <Stack gap="sm">
      {texts.revokeAsk}
      <Group gap="sm">
        <Button loading={revoke.isPending} onClick={() => revoke.mutate(id)}>
          {texts.revokeYes}
        </Button>
        <Button variant="default" onClick={() => setAsking(false)}>
          {texts.keep}
        </Button>
      </Group>
      <Failure error={revoke.error} word={texts.notRevoked} />
    </Stack>
  );
}
