import { Button, Checkbox, Group, PasswordInput, Stack, Text, Title } from '@mantine/core';
import { useForm } from '@mantine/form';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { useChangePassword } from '../api/change-password.js';
import type { ActingTokens } from '../api/acting-tokens.js';
import { texts } from '../password-texts.js';
import { ActingTokensList } from './acting-tokens-list.js';

interface ChangePasswordFormProps {
  readonly email: string;
  /** API tokens that act for the account; undefined where that could not be read. */
  readonly tokens: readonly ActingTokens[] | undefined;
  /** Teams whose page of tokens is open to the person. */
  readonly openTeamIds: ReadonlySet<string>;
}

/** Changes the password of who is signed in as `email`. */
export function ChangePasswordForm({ email, tokens, openTeamIds }: ChangePasswordFormProps) {
  const change = useChangePassword();
  const form = useForm({
    mode: 'uncontrolled',
    initialValues: { oldPassword: '', newPassword: '', revokesTokens: false },
  });
  const submit = form.onSubmit((passwords) =>
    change.mutate(passwords, {
      onSuccess: () => form.reset(),
      onError: (error) => form.setErrors(fieldErrors(error)),
    }),
  );
  return (
    <form onSubmit={submit} noValidate>
      <Stack maw="24rem">
        <Title order={2}>{texts.title}</Title>
        <Text c="dimmed">{texts.lead}</Text>
        {/* For the browser's keeper of passwords, which asks whose they are. */}
        <input type="hidden" name="username" autoComplete="username" value={email} />
        <PasswordInput
          label={texts.old}
          autoComplete="current-password"
          required
          key={form.key('oldPassword')}
          {...form.getInputProps('oldPassword')}
        />
        <PasswordInput
          label={texts.new}
          description={texts.hint}
          autoComplete="new-password"
          required
          key={form.key('newPassword')}
          {...form.getInputProps('newPassword')}
        />
        {tokens !== undefined && tokens.length > 0 && (
          <ActingTokensList tokens={tokens} openTeamIds={openTeamIds} />
        )}
        {tokens?.length !== 0 && (
          <Checkbox
            label={texts.endTokens}
            description={texts.endTokensWhy}
            key={form.key('revokesTokens')}
            {...form.getInputProps('revokesTokens', { type: 'checkbox' })}
          />
        )}
        <Failure error={change.error} word={texts.notChanged} />
        <Group>
          <Button type="submit" variant="default" loading={change.isPending}>
            {texts.change}
          </Button>
        </Group>
        <Text size="sm" role="status">
          {change.isSuccess && texts.changed}{' '}
          {change.isSuccess && change.data.inForce.length > 0 && texts.tokensLeft}
          {change.isSuccess && change.variables.revokesTokens && texts.noTokensLeft}
        </Text>
      </Stack>
    </form>
  );
}
