import { Button, PasswordInput, Stack, Text, TextInput, Title } from '@mantine/core';
import { useForm } from '@mantine/form';
import type { UseMutationResult } from '@tanstack/react-query';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import { Failure } from '../../../shared/ui/error-view.js';
import type { Account } from '../api/account.js';
import { texts } from '../texts.js';

interface Person {
  readonly displayName: string;
  readonly email: string;
  readonly password: string;
}

interface PersonFormProps {
  readonly title: string;
  readonly lead: string;
  /** Makes the account, by an invitation or for a new team. */
  readonly make: UseMutationResult<Account, Error, Person>;
  readonly onMade: () => void;
}

/** Who a new person is, and how they will sign in. */
export function PersonForm({ title, lead, make, onMade }: PersonFormProps) {
  const form = useForm({ mode: 'uncontrolled', initialValues: { displayName: '', email: '', password: '' } });
  const submit = form.onSubmit((person) =>
    make.mutate(person, {
      onSuccess: onMade,
      onError: (error) => form.setErrors(fieldErrors(error)),
    }),
  );
  return (
    <form onSubmit={submit} noValidate>
      <Stack>
        <Title order={1}>{title}</Title>
        <Text c="dimmed">{lead}</Text>
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
        <Failure error={make.error} word={texts.noAccountMade} />
        <Button type="submit" loading={make.isPending}>
          {title}
        </Button>
      </Stack>
    </form>
  );
}
