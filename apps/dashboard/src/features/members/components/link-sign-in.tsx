import { Checkbox } from '@mantine/core';
import { useState } from 'react';
import type { Member } from '../api/members.js';
import { useLinkSignIn } from '../api/link-sign-in.js';
import { texts } from '../texts.js';
import { MakeLink } from './make-link.js';

/** Lets a rider sign in on another phone: asks whether the old one is lost, then shows the link. */
export function LinkSignIn({ teamId, member }: { teamId: string; member: Member }) {
  const [isLost, setIsLost] = useState(true);
  const link = useLinkSignIn(teamId, member.id);
  return (
    <MakeLink label={texts.signInLink} link={link} onMake={() => link.mutate(isLost)}>
      <Checkbox
        label={texts.phoneLost}
        checked={isLost}
        onChange={(event) => setIsLost(event.currentTarget.checked)}
      />
    </MakeLink>
  );
}
