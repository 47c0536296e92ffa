import { Text } from '@mantine/core';
import { formatNumber } from '../../../shared/format/numbers.js';
import { formatDay } from '../../../shared/format/time.js';
import { AskWhy } from '../../../shared/ui/form/ask-why.js';
import { useTakeBackEntry, type ServiceEntry } from '../api/unit-service.js';
import { texts } from '../texts.js';
import classes from './unit-service.module.css';

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
    <ul className={classes.entries}>
      {entries.map((entry) => (
        <li key={entry.id}>
          <div>
            <Text fw={600} className={entry.isTakenBack ? classes.gone : undefined}>
              {nameOf(entry)}
            </Text>
            <Text size="sm" c="dimmed">
              {texts.by(entry.doneBy)}
              {entry.isTakenBack && ` · ${texts.takenBack}`}
              {entry.takesBackId !== null && ` · ${texts.takesBack}`}
            </Text>
            {entry.note !== '' && <Text>“{entry.note}”</Text>}
          </div>
          {canChange && !entry.isTakenBack && entry.takesBackId === null && (
            <TakeBack teamId={teamId} entry={entry} />
          )}
        </li>
      ))}
    </ul>
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
