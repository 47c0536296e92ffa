import { getRouteApi, useRouter } from '@tanstack/react-router';
import { SignInForm } from '../../features/account/components/sign-in-form.js';
import { DoorShell } from '../shell/door-shell.js';

const route = getRouteApi('/sign-in');

export function SignInPage() {
  const router = useRouter();
  const { to } = route.useSearch();
  return (
    <DoorShell>
      <SignInForm onSignedIn={() => router.history.push(safePath(to))} />
    </DoorShell>
  );
}

/** Only a path of this site: a link with `//elsewhere` must not lead a signed-in person away. */
function safePath(path: string | undefined): string {
  return path !== undefined && /^\/(?![/\\])/.test(path) ? path : '/';
}
