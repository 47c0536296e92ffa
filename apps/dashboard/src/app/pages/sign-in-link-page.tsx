import { Button, Stack, Text, Title } from '@mantine/core';
import { useLocation, useNavigate } from '@tanstack/react-router';
import { useSignInByLink } from '../../features/account/api/sign-in-by-link.js';
import { texts } from '../../features/account/texts.js';
import { Failure } from '../../shared/ui/error-view.js';
import { DoorShell } from '../shell/door-shell.js';

export function SignInLinkPage() {
  const navigate = useNavigate();
  // After the hash, so that the token of the link never reaches a log.
  const token = useLocation({ select: ({ hash }) => hash });
  const signIn = useSignInByLink();
  return (
    <DoorShell>
      <Stack>
        <Title order={1}>{texts.signIn}</Title>
        <Text c="dimmed">{token === '' ? texts.signInLinkBroken : texts.signInLinkLead}</Text>
        <Failure error={signIn.error} word={texts.notSignedIn} />
        {token !== '' && (
          // By a press, so that nothing that only looks at links uses it up.
          <Button
            size="lg"
            loading={signIn.isPending}
            onClick={() => signIn.mutate(token, { onSuccess: () => void navigate({ to: '/' }) })}
          >
            {texts.signIn}
          </Button>
        )}
      </Stack>
    </DoorShell>
  );
}
