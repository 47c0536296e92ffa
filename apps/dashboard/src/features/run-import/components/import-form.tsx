import { Button, Group, Stack, Text, Textarea } from '@mantine/core';
import { useState, type FormEvent } from 'react';
import { formatCount } from '../../../shared/format/numbers.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { FileField } from '../../../shared/ui/file-field.js';
import { useImportRuns } from '../api/import-runs.js';
import { usePreviewImport } from '../api/preview-import.js';
import { texts } from '../texts.js';
import classes from './run-import.module.css';
import { ImportProblems } from './import-problems.js';
import { ImportRows } from './import-rows.js';

/** From a notebook to runs: choose or paste, check, see, store. */
export function ImportForm({ teamId }: { teamId: string }) {
  const [csv, setCsv] = useState('');
  const preview = usePreviewImport(teamId);
  const store = useImportRuns(teamId);

  // What was checked is no longer what would be stored.
  const change = (text: string) => {
    setCsv(text);
    preview.reset();
    store.reset();
  };
  // Lines that were pasted stay where no file is chosen any more.
  const choose = (text: string | null) => text !== null && change(text);
  const check = (event: FormEvent) => {
    event.preventDefault();
    preview.mutate(csv);
  };

  return (
    <Stack>
      <form onSubmit={check}>
        <Stack>
          <Text c="dimmed" maw="70ch">
            {texts.columns}
          </Text>
          <FileField label={texts.file} accept=".csv,text/csv" notDone={texts.notChecked} onText={choose} />
          <Textarea
            label={texts.paste}
            autosize
            minRows={4}
            maxRows={14}
            value={csv}
            onChange={(event) => change(event.currentTarget.value)}
            classNames={{ input: classes.lines }}
            spellCheck={false}
          />
          <Failure error={preview.error} word={texts.notChecked} />
          <Group>
            <Button type="submit" variant="default" disabled={csv.trim() === ''} loading={preview.isPending}>
              {texts.check}
            </Button>
          </Group>
        </Stack>
      </form>
      {preview.data !== undefined && preview.data.problemCount > 0 && (
        <ImportProblems preview={preview.data} />
      )}
      {preview.data?.problemCount === 0 && !store.isSuccess && (
        <>
          <ImportRows preview={preview.data} />
          <Failure error={store.error} word={texts.notStored} />
          <Group>
            <Button loading={store.isPending} onClick={() => store.mutate(csv)}>
              {texts.store(formatCount(preview.data.runs, 'run'))}
            </Button>
          </Group>
        </>
      )}
      <Text role="status" fw={600}>
        {store.isSuccess && texts.stored(formatCount(store.data.runs, 'run'))}
      </Text>
    </Stack>
  );
}
