import { Button, Checkbox, Group, Stack } from '@mantine/core';
import { useState } from 'react';
import { Failure } from '../../../shared/ui/error-view.js';
import type { Member } from '../api/members.js';
import { useLinkSignIn } from '../api/link-sign-in.js';
import { texts } from '../texts.js';
import { SingleUseLink } from './single-use-link.js';

/** Lets a rider sign in on another phone: asks whether the old one is lost, then shows the link. */
export function LinkSignIn({ teamId, member }: { teamId: string; member: Member }) {
  const [asking, setAsking] = useState(false);
  const [isLost, setIsLost] = useState(true);
  const link = useLinkSignIn(teamId, member.id);
  if (!asking) {
    return (
      <Button variant="default" onClick={() => setAsking(true)}>
        {texts.signInLink}
      </Button>
    );
  }
  return (
    <Stack gap="sm">
      <Checkbox
        label={texts.phoneLost}
        checked={isLost}
        onChange={(event) => setIsLost(event.currentTarget.checked)}
      />
      <Group gap="sm">
        <Button loading={link.isPending} onClick={() => link.mutate(isLost)}>
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
