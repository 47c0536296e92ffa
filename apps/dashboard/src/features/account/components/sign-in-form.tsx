import { Button, PasswordInput, Stack, Text, TextInput, Title } from '@mantine/core';
import { useForm } from '@mantine/form';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { TextLink } from '../../../shared/ui/link.js';
import type { Account } from '../api/account.js';
import { useSignIn } from '../api/sign-in.js';
import { texts } from '../texts.js';

export function SignInForm({ onSignedIn }: { onSignedIn: (account: Account) => void }) {
  const signIn = useSignIn();
  const form = useForm({ mode: 'uncontrolled', initialValues: { email: '', password: '' } });
  const submit = form.onSubmit((credentials) =>
    signIn.mutate(credentials, {
      onSuccess: onSignedIn,
      onError: (error) => form.setErrors(fieldErrors(error)),
    }),
  );
  return (
    <form onSubmit={submit} noValidate>
      <Stack>
        <Title order={1}>{texts.signIn}</Title>
        <Text c="dimmed">{texts.product}</Text>
        <TextInput
          label={texts.email}
          type="email"
          autoComplete="username"
          required
          key={form.key('email')}
          {...form.getInputProps('email')}
        />
        <PasswordInput
          label={texts.password}
          autoComplete="current-password"
          required
          key={form.key('password')}
          {...form.getInputProps('password')}
        />
        <Failure error={signIn.error} word={texts.notSignedIn} />
        <Button type="submit" loading={signIn.isPending}>
          {texts.signIn}
        </Button>
        <Text size="sm" c="dimmed">
          {texts.forgotten}
        </Text>
        <Text size="sm" c="dimmed">
          {texts.noAccount} <TextLink to="/sign-up">{texts.startOwn}</TextLink>.
        </Text>
      </Stack>
    </form>
  );
}
