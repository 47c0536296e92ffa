import { useLocation, useNavigate } from '@tanstack/react-router';
import { NewPasswordForm } from '../../features/account/components/new-password-form.js';
import { texts } from '../../features/account/password-texts.js';
import { Empty } from '../../shared/ui/empty.js';
import { DoorShell } from '../shell/door-shell.js';

export function NewPasswordPage() {
  const navigate = useNavigate();
  // After the hash, so that the token of the link never reaches a log.
  const token = useLocation({ select: ({ hash }) => hash });
  return (
    <DoorShell>
      {token === '' ? (
        <Empty isPage title={texts.setTitle}>
          {texts.linkBroken}
        </Empty>
      ) : (
        <NewPasswordForm token={token} onSet={() => void navigate({ to: '/' })} />
      )}
    </DoorShell>
  );
}
