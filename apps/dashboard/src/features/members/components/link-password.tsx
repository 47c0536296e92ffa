import { useLinkPassword } from '../api/link-password.js';
import type { Member } from '../api/members.js';
import { texts } from '../texts.js';
import { MakeLink } from './make-link.js';

/** Lets a member who has forgotten the password set a new one: says what it does, then shows the link. */
export function LinkPassword({ teamId, member }: { teamId: string; member: Member }) {
  const link = useLinkPassword(teamId, member.id);
  return (
    <MakeLink label={texts.passwordLink} link={link} onMake={() => link.mutate(undefined)}>
      {texts.passwordLinkAsk(member.displayName)}
    </MakeLink>
  );
}
