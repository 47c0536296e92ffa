import { useLocation, useNavigate } from '@tanstack/react-router';
import { JoinForm } from '../../features/account/components/join-form.js';
import { texts } from '../../features/account/texts.js';
import { Empty } from '../../shared/ui/empty.js';
import { DoorShell } from '../shell/door-shell.js';

export function JoinPage() {
  const navigate = useNavigate();
  // After the hash, so that the token of the link never reaches a log.
  const token = useLocation({ select: ({ hash }) => hash });
  return (
    <DoorShell>
      {token === '' ? (
        <Empty title={texts.join}>{texts.linkBroken}</Empty>
      ) : (
        <JoinForm token={token} onJoined={() => void navigate({ to: '/' })} />
      )}
    </DoorShell>
  );
}
