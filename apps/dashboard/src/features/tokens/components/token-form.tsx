import { Button, Checkbox, Group, Stack, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useState } from 'react';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { useMakeToken, type TokenScope } from '../api/tokens.js';
import { texts } from '../texts.js';

export function TokenForm({ teamId }: { teamId: string }) {
  const make = useMakeToken(teamId);
  const form = useForm({ initialValues: { name: '', scopes: ['read'] as TokenScope[] } });
  const submit = form.onSubmit((wish) =>
    make.mutate(wish, {
      onSuccess: () => form.reset(),
      onError: (error) => form.setErrors(fieldErrors(error)),
    }),
  );
  return (
    <form onSubmit={submit} noValidate>
      <Stack maw="32rem">
        <TextInput label={texts.name} {...form.getInputProps('name')} />
        <Checkbox.Group label={texts.scopes} {...form.getInputProps('scopes')}>
          <Stack gap="sm" mt="sm">
            {Object.entries(texts.scope).map(([value, label]) => (
              <Checkbox key={value} value={value} label={label} />
            ))}
          </Stack>
        </Checkbox.Group>
        <Failure error={make.error} />
        <Group>
          <Button type="submit" loading={make.isPending}>
            {texts.make}
          </Button>
        </Group>
        {make.data !== undefined && <NewToken token={make.data.token} />}
      </Stack>
    </form>
  );
}

function NewToken({ token }: { token: string }) {
  const [copied, setCopied] = useState(false);
  const copy = () => void navigator.clipboard.writeText(token).then(() => setCopied(true));
  return (
    <Group align="end" gap="sm">
      <TextInput
        label={texts.token}
        value={token}
        readOnly
        flex={1}
        onFocus={(event) => event.currentTarget.select()}
      />
      <Button variant="default" onClick={copy}>
        <span role="status">{copied ? texts.copied : texts.copy}</span>
      </Button>
    </Group>
  );
}
