import { Text } from '@mantine/core';
import { formatNumber } from '../../../shared/format/numbers.js';
import { formatDay } from '../../../shared/format/time.js';
import { AskWhy } from '../../../shared/ui/form/ask-why.js';
import { RecordList, RecordRow } from '../../../shared/ui/record-list.js';
import { useTakeBackEntry, type ServiceEntry } from '../api/unit-service.js';
import { texts } from '../texts.js';

interface EntryListProps {
  readonly teamId: string;
  readonly entries: readonly ServiceEntry[];
  readonly canChange: boolean;
}

const nameOf = ({ kind, day, ridingHours }: ServiceEntry) =>
  [
    texts.kind[kind],
    ...(ridingHours === null ? [] : [texts.hoursOf(formatNumber(ridingHours, 1))]),
    formatDay(day),
  ].join(' · ');

/** What was recorded of a unit, newest first; what was taken back is struck out and stays. */
export function EntryList({ teamId, entries, canChange }: EntryListProps) {
  return (
    <RecordList>
      {entries.map((entry) => (
        <RecordRow
          key={entry.id}
          name={nameOf(entry)}
          isGone={entry.isTakenBack}
          act={
            canChange &&
            !entry.isTakenBack &&
            entry.takesBackId === null && <TakeBack teamId={teamId} entry={entry} />
          }
        >
          <Text size="sm" c="dimmed">
            {texts.by(entry.doneBy)}
            {entry.isTakenBack && ` · ${texts.takenBack}`}
            {entry.takesBackId !== null && ` · ${texts.takesBack}`}
          </Text>
          {entry.note !== '' && <Text>“{entry.note}”</Text>}
        </RecordRow>
      ))}
    </RecordList>
  );
}

function TakeBack({ teamId, entry }: { teamId: string; entry: ServiceEntry }) {
  const takeBack = useTakeBackEntry(teamId, entry);
  return (
    <AskWhy
      label={texts.takeBack}
      fullLabel={texts.takeBackOf(nameOf(entry))}
      lead={texts.takeBackLead}
      why={texts.why}
      field="note"
      error={takeBack.error}
      isPending={takeBack.isPending}
      onSure={(note, done) => takeBack.mutate(note, { onSuccess: done })}
    />
  );
}
