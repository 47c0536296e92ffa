import { useLocation, useNavigate } from '@tanstack/react-router';
import { useJoin } from '../../features/account/api/join.js';
import { PersonForm } from '../../features/account/components/person-form.js';
import { texts } from '../../features/account/texts.js';
import { Empty } from '../../shared/ui/empty.js';
import { DoorShell } from '../shell/door-shell.js';

export function JoinPage() {
  const navigate = useNavigate();
  // After the hash, so that the token of the link never reaches a log.
  const token = useLocation({ select: ({ hash }) => hash });
  const join = useJoin(token);
  return (
    <DoorShell>
      {token === '' ? (
        <Empty isPage title={texts.join}>
          {texts.linkBroken}
        </Empty>
      ) : (
        <PersonForm
          title={texts.join}
          lead={texts.joinLead}
          make={join}
          onMade={() => void navigate({ to: '/' })}
        />
      )}
    </DoorShell>
  );
}
