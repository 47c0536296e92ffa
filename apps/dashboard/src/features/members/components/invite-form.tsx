import { Button, Group, NativeSelect, Stack, Text, TextInput } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useState } from 'react';
import { fieldErrors } from '../../../shared/http/problem.js';
import type { Rider } from '../../../shared/http/reads/riders.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { useInvite, type InvitationInput } from '../api/invite.js';
import { texts } from '../texts.js';

interface InviteFormProps {
  readonly teamId: string;
  readonly riders: readonly Rider[];
}

export function InviteForm({ teamId, riders }: InviteFormProps) {
  const invite = useInvite(teamId);
  const form = useForm({ initialValues: { role: 'rider', riderId: '' } });
  const submit = form.onSubmit(({ role, riderId }) =>
    invite.mutate(
      { role: role as InvitationInput['role'], riderId: riderId === '' ? null : riderId },
      { onError: (error) => form.setErrors(fieldErrors(error)) },
    ),
  );
  return (
    <form onSubmit={submit} noValidate>
      <Stack maw="32rem">
        <Text c="dimmed">{texts.inviteLead}</Text>
        <NativeSelect label={texts.inviteRole} data={texts.roles} {...form.getInputProps('role')} />
        <NativeSelect
          label={texts.inviteRider}
          data={[
            { value: '', label: form.values.role === 'rider' ? texts.chooseRider : texts.notRiding },
            ...riders.map(({ id, name }) => ({ value: id, label: name })),
          ]}
          {...form.getInputProps('riderId')}
        />
        <Failure error={invite.error} />
        <Group>
          <Button type="submit" loading={invite.isPending}>
            {texts.make}
          </Button>
        </Group>
        {invite.data !== undefined && <Link path={invite.data.path} />}
      </Stack>
    </form>
  );
}

function Link({ path }: { path: string }) {
  const [copied, setCopied] = useState(false);
  const address = new URL(path, window.location.href).href;
  const copy = () => void navigator.clipboard.writeText(address).then(() => setCopied(true));
  return (
    <Group align="end" gap="sm">
      <TextInput
        label={texts.link}
        value={address}
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
