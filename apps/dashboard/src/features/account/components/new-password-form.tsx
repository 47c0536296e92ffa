import { Button, Checkbox, PasswordInput, Stack, Text, Title } from '@mantine/core';
import { useForm } from '@mantine/form';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { useSetPasswordByLink } from '../api/set-password-by-link.js';
import { texts } from '../password-texts.js';

interface NewPasswordFormProps {
  /** Of the link that was opened. */
  readonly token: string;
  readonly onSet: () => void;
}

/** Sets a password that was forgotten. */
export function NewPasswordForm({ token, onSet }: NewPasswordFormProps) {
  const setPassword = useSetPasswordByLink(token);
  const form = useForm({ mode: 'uncontrolled', initialValues: { newPassword: '', revokesTokens: false } });
  const submit = form.onSubmit((wanted) =>
    setPassword.mutate(wanted, {
      onSuccess: onSet,
      onError: (error) => form.setErrors(fieldErrors(error)),
    }),
  );
  return (
    <form onSubmit={submit} noValidate>
      <Stack>
        <Title order={1}>{texts.setTitle}</Title>
        <Text c="dimmed">{texts.setLead}</Text>
        <PasswordInput
          label={texts.new}
          description={texts.hint}
          autoComplete="new-password"
          required
          key={form.key('newPassword')}
          {...form.getInputProps('newPassword')}
        />
        <Checkbox
          label={texts.endTokens}
          description={texts.endTokensWhy}
          key={form.key('revokesTokens')}
          {...form.getInputProps('revokesTokens', { type: 'checkbox' })}
        />
        <Failure error={setPassword.error} word={texts.notChanged} />
        <Button type="submit" loading={setPassword.isPending}>
          {texts.set}
        </Button>
      </Stack>
    </form>
  );
}
