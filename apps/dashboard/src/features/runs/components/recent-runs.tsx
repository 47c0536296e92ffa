import { Text } from '@mantine/core';
import { formatDay, formatRunTime } from '../../../shared/format/time.js';
import type { Run } from '../../../shared/http/reads/runs.js';
import { readingText } from '../model/reading-text.js';
import { texts } from '../texts.js';
import { RunNote } from './run-table.js';
import classes from './runs.module.css';

interface RecentRunsProps {
  readonly runs: readonly Run[];
  readonly trackName: (id: string) => string;
}

/** The last runs, for the phone. */
export function RecentRuns({ runs, trackName }: RecentRunsProps) {
  return (
    <ol className={classes.recent}>
      {runs.map((run) => (
        <li key={run.id}>
          <div className={classes.head}>
            <Text fw={600}>{trackName(run.trackId)}</Text>
            <Text fw={600}>{run.timeS === null ? texts.notTimed : formatRunTime(run.timeS)}</Text>
          </div>
          <Text size="sm" c="dimmed">
            {formatDay(run.day)}, run {run.orderInSession}, {run.condition}
          </Text>
          <Text size="sm">
            {texts.fork} {readingText(run.fork)}
          </Text>
          {run.shock !== null && (
            <Text size="sm">
              {texts.shock} {readingText(run.shock)}
            </Text>
          )}
          <Text size="sm" component="div">
            <RunNote run={run} />
          </Text>
        </li>
      ))}
    </ol>
  );
}
