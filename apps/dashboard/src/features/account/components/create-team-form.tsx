import { Button, Stack, TextInput } from '@mantine/core';
import { useState, type FormEvent } from 'react';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { useCreateTeam } from '../api/create-team.js';
import { texts } from '../texts.js';

export function CreateTeamForm({ onMade }: { onMade: (teamId: string) => void }) {
  const create = useCreateTeam();
  const [name, setName] = useState('');
  const submit = (event: FormEvent) => {
    event.preventDefault();
    create.mutate(name, { onSuccess: ({ id }) => onMade(id) });
  };
  return (
    <form onSubmit={submit} noValidate>
      <Stack>
        <TextInput
          label={texts.teamName}
          required
          value={name}
          onChange={(event) => setName(event.currentTarget.value)}
          error={fieldErrors(create.error)['name']}
        />
        <Failure error={create.error} />
        <Button type="submit" loading={create.isPending}>
          {texts.makeTeam}
        </Button>
      </Stack>
    </form>
  );
}
