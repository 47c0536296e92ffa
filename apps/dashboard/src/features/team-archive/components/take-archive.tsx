import { Button, Group, Stack, Text } from '@mantine/core';
import { useState, type FormEvent } from 'react';
import { ApiProblem } from '../../../shared/http/problem.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { FileField } from '../../../shared/ui/file-field.js';
import { useTakeArchive } from '../api/take-archive.js';
import { texts } from '../texts.js';
import { ArchiveProblems } from './archive-problems.js';
import { TakenTeam } from './taken-team.js';

/** From a file to a new team: choose, take in, see who has to be invited again. */
export function TakeArchive({ onOpen }: { onOpen: (teamId: string) => void }) {
  const [archive, setArchive] = useState('');
  const take = useTakeArchive();

  const choose = (text: string | null) => {
    setArchive(text ?? '');
    take.reset();
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    take.mutate(archive);
  };

  if (take.isSuccess) return <TakenTeam team={take.data} onOpen={() => onOpen(take.data.id)} />;
  return (
    <form onSubmit={submit}>
      <Stack>
        <Text maw="70ch">{texts.takeLead}</Text>
        <FileField
          label={texts.file}
          accept=".json,application/json"
          notDone={texts.notTaken}
          onText={choose}
        />
        <Failure error={take.error} word={texts.notTaken} />
        {take.error instanceof ApiProblem && <ArchiveProblems fields={take.error.fields} />}
        <Group>
          <Button type="submit" variant="default" disabled={archive === ''} loading={take.isPending}>
            {texts.takeButton}
          </Button>
        </Group>
      </Stack>
    </form>
  );
}
