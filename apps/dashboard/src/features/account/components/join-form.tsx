import { Button, PasswordInput, Stack, Text, TextInput, Title } from '@mantine/core';
import { useForm } from '@mantine/form';
import { fieldErrors } from '../../../shared/http/problem.js';
import { Failure } from '../../../shared/ui/error-view.js';
import type { Account } from '../api/account.js';
import { useJoin } from '../api/join.js';
import { texts } from '../texts.js';

interface JoinFormProps {
  /** From the single-use link. */
  readonly token: string;
  readonly onJoined: (account: Account) => void;
}

export function JoinForm({ token, onJoined }: JoinFormProps) {
  const join = useJoin();
  const form = useForm({ mode: 'uncontrolled', initialValues: { displayName: '', email: '', password: '' } });
  const submit = form.onSubmit((person) =>
    join.mutate(
      { ...person, token },
      { onSuccess: onJoined, onError: (error) => form.setErrors(fieldErrors(error)) },
    ),
  );
  return (
    <form onSubmit={submit} noValidate>
      <Stack>
        <Title order={1}>{texts.join}</Title>
        <Text c="dimmed">{texts.joinLead}</Text>
        <TextInput
          label={texts.name}
          autoComplete="name"
          required
          key={form.key('displayName')}
          {...form.getInputProps('displayName')}
        />
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
          description={texts.passwordHint}
          autoComplete="new-password"
          required
          key={form.key('password')}
          {...form.getInputProps('password')}
        />
        <Failure error={join.error} word={texts.notJoined} />
        <Button type="submit" loading={join.isPending}>
          {texts.join}
        </Button>
      </Stack>
    </form>
  );
}
