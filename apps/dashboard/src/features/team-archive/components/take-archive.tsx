import { Button, Group, Stack, Text } from '@mantine/core';
import { useState, type ChangeEvent, type FormEvent } from 'react';
import { ApiProblem } from '../../../shared/http/problem.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { FileField } from '../../../shared/ui/file-field.js';
import { Warning } from '../../../shared/ui/note.js';
import { useTakeArchive } from '../api/take-archive.js';
import { texts } from '../texts.js';
import { ArchiveProblems } from './archive-problems.js';
import { TakenTeam } from './taken-team.js';

/** From a file to a new team: choose, take in, see who has to be invited again. */
export function TakeArchive({ onOpen }: { onOpen: (teamId: string) => void }) {
  const [archive, setArchive] = useState('');
  const [isUnreadable, setUnreadable] = useState(false);
  const take = useTakeArchive();

  const choose = (event: ChangeEvent<HTMLInputElement>) => {
    const [file] = event.currentTarget.files ?? [];
    take.reset();
    setUnreadable(false);
    if (file === undefined) return setArchive('');
    file.text().then(setArchive, () => setUnreadable(true));
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
        <FileField label={texts.file} accept=".json,application/json" onChange={choose} />
        {isUnreadable && (
          <Warning word={`${texts.notTaken}.`} urgent>
            {texts.unreadable}
          </Warning>
        )}
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
