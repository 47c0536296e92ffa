import { useNavigate } from '@tanstack/react-router';
import { useSignUp } from '../../features/account/api/sign-up.js';
import { PersonForm } from '../../features/account/components/person-form.js';
import { texts } from '../../features/account/texts.js';
import { DoorShell } from '../shell/door-shell.js';

export function SignUpPage() {
  const navigate = useNavigate();
  const signUp = useSignUp();
  return (
    <DoorShell>
      <PersonForm
        title={texts.signUp}
        lead={texts.signUpLead}
        make={signUp}
        onMade={() => void navigate({ to: '/' })}
      />
    </DoorShell>
  );
}
