import { Button, Group, Stack } from '@mantine/core';
import { useState } from 'react';
import { Failure } from '../../../shared/ui/error-view.js';
import { useLinkPassword } from '../api/link-password.js';
import type { Member } from '../api/members.js';
import { texts } from '../texts.js';
import { SingleUseLink } from './single-use-link.js';

/** Lets a member who has forgotten the password set a new one: says what it does, then shows the link. */
export function LinkPassword({ teamId, member }: { teamId: string; member: Member }) {
  const [asking, setAsking] = useState(false);
  const link = useLinkPassword(teamId, member.id);
  if (!asking) {
    return (
      <Button variant="default" onClick={() => setAsking(true)}>
        {texts.passwordLink}
      </Button>
    );
  }
  return (
    <Stack gap="sm">
      {texts.passwordLinkAsk(member.displayName)}
      <Group gap="sm">
        <Button loading={link.isPending} onClick={() => link.mutate(undefined)}>
          {texts.make}
        </Button>
        <Button variant="default" onClick={() => setAsking(false)}>
          {texts.close}
        </Button>
      </Group>
      <Failure error={link.error} />
      {link.data !== undefined && <SingleUseLink path={link.data.path} expiresAt={link.data.expiresAt} />}
    </Stack>
  );
}
