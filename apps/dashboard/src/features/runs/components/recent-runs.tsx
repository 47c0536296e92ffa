import { formatDay, formatRunTime } from '../../../shared/format/time.js';
import type { Run } from '../../../shared/http/reads/runs.js';
import { readingText } from '../model/reading-text.js';
import { texts } from '../texts.js';
import { RunNote } from './run-note.js';
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
            <span>{trackName(run.trackId)}</span>
            <span>{run.timeS === null ? texts.notTimed : formatRunTime(run.timeS)}</span>
          </div>
          <div className={classes.dimmed}>
            {formatDay(run.day)}, run {run.orderInSession}, {run.condition}
          </div>
          <div>
            {texts.fork}: {readingText(run.fork)}
          </div>
          {run.shock !== null && (
            <div>
              {texts.shock}: {readingText(run.shock)}
            </div>
          )}
          <RunNote run={run} />
        </li>
      ))}
    </ol>
  );
}
