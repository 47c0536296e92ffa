import { Button, TextInput } from '@mantine/core';
import { useState } from 'react';
import { formatRunTime } from '../../../shared/format/time.js';
import type { RunValues } from '../model/run-form.js';
import { elapsedS, runTimer, sectionTimesS, type RunTimer } from '../model/run-timer.js';
import { texts } from '../texts.js';
import classes from './ride.module.css';
import { useNow } from './use-now.js';

interface TimeFieldProps {
  readonly time: string;
  readonly error: string | undefined;
  /** Names of the track's sections, in riding order: where one ends can be marked while the timer runs. */
  readonly sections: readonly string[];
  readonly onChange: (part: Partial<Pick<RunValues, 'time' | 'sections'>>) => void;
}

/**
 * The time of the run: from the timer, which only remembers moments and so survives a locked screen, or typed. Where the
 * track has sections, one touch marks the end of each.
 */
export function TimeField({ time, error, sections, onChange }: TimeFieldProps) {
  const [timer, setTimer] = useState(() => runTimer.read(Date.now()));
  const isRunning = timer !== null && timer.stoppedAt === null;
  const now = useNow(isRunning);
  const keep = (next: RunTimer) => {
    runTimer.write(next);
    setTimer(next);
  };
  const start = () => {
    setTimer(runTimer.start(Date.now()));
    onChange({ time: '', sections: {} });
  };
  const stop = (running: RunTimer) => {
    const stopped = { ...running, stoppedAt: Date.now() };
    keep(stopped);
    const taken = sectionTimesS(stopped, sections.length);
    onChange({
      time: formatRunTime(elapsedS(stopped, stopped.stoppedAt)),
      sections: Object.fromEntries(taken.map((s, i) => [sections[i], formatRunTime(s)])),
    });
  };
  if (isRunning) {
    // The last section ends with the run.
    const ending = sections.length > 1 ? sections.slice(0, -1)[timer.marks.length] : undefined;
    return (
      <div className={classes.timer}>
        <span className={classes.clock} role="timer" aria-label={texts.timer}>
          {formatRunTime(elapsedS(timer, now))}
        </span>
        <Button size="lg" onClick={() => stop(timer)}>
          {texts.stop}
        </Button>
        {ending !== undefined && (
          <Button
            className={classes.mark}
            variant="default"
            size="lg"
            onClick={() => keep({ ...timer, marks: [...timer.marks, Date.now()] })}
          >
            {texts.endOf(ending)}
          </Button>
        )}
      </div>
    );
  }
  return (
    <div className={classes.timed}>
      <TextInput
        label={texts.time}
        placeholder="2:07.4"
        description={texts.timeHint}
        // Not a numeric keyboard: it has no colon.
        inputMode="text"
        autoComplete="off"
        value={time}
        error={error}
        onChange={(event) => onChange({ time: event.currentTarget.value })}
      />
      <Button variant="default" onClick={start}>
        {time === '' ? texts.startTimer : texts.restart}
      </Button>
    </div>
  );
}
