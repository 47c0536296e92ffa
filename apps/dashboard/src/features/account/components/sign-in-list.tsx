import { Button, Group, Stack, Text } from '@mantine/core';
import { formatMoment } from '../../../shared/format/time.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { useEndSignIn, type SignIn } from '../api/sign-ins.js';
import { texts } from '../sign-in-texts.js';

export function SignInList({ signIns }: { signIns: readonly SignIn[] }) {
  const end = useEndSignIn();
  return (
    <Stack gap="lg" maw="40rem">
      {signIns.map((signIn) => (
        <Group key={signIn.id} justify="space-between" align="start">
          <div>
            <Text fw={600}>
              {texts.device[signIn.device]}
              {signIn.current && ` · ${texts.thisOne}`}
            </Text>
            <Text size="sm" c="dimmed">
              {texts.began} {formatMoment(signIn.createdAt)} · {texts.lastUsed}{' '}
              {formatMoment(signIn.lastSeenAt)}
            </Text>
          </div>
          {!signIn.current && (
            <Button
              variant="default"
              loading={end.isPending && end.variables === signIn.id}
              onClick={() => end.mutate(signIn.id)}
            >
              {texts.end}
            </Button>
          )}
        </Group>
      ))}
      <Failure error={end.error} word={texts.notEnded} />
    </Stack>
  );
}
