import { Button, Group, NativeSelect, Stack, Text } from '@mantine/core';
import { useForm } from '@mantine/form';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import type { Rider } from '../../../shared/http/reads/riders.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { useInvite, type InvitationInput } from '../api/invite.js';
import { texts } from '../texts.js';
import { SingleUseLink } from './single-use-link.js';

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
        {invite.data !== undefined && (
          <SingleUseLink path={invite.data.path} expiresAt={invite.data.expiresAt} />
        )}
      </Stack>
    </form>
  );
}
