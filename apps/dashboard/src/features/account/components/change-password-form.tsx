import { Button, Group, PasswordInput, Stack, Text, Title } from '@mantine/core';
import { useForm } from '@mantine/form';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { useChangePassword } from '../api/change-password.js';
import { texts } from '../password-texts.js';

/** Changes the password of who is signed in as `email`. */
export function ChangePasswordForm({ email }: { email: string }) {
  const change = useChangePassword();
  const form = useForm({ mode: 'uncontrolled', initialValues: { oldPassword: '', newPassword: '' } });
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
        <Failure error={change.error} word={texts.notChanged} />
        <Group>
          <Button type="submit" variant="default" loading={change.isPending}>
            {texts.change}
          </Button>
        </Group>
        <Text size="sm" role="status">
          {change.isSuccess && texts.changed}
        </Text>
      </Stack>
    </form>
  );
}
