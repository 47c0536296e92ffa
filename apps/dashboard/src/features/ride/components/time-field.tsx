import { Button, TextInput } from '@mantine/core';
import { useState } from 'react';
import { formatRunTime } from '../../../shared/format/time.js';
import { elapsedS, runTimer, type RunTimer } from '../model/run-timer.js';
import { texts } from '../texts.js';
import classes from './ride.module.css';
import { useNow } from './use-now.js';

interface TimeFieldProps {
  readonly time: string;
  readonly error: string | undefined;
  readonly onChange: (time: string) => void;
}

/** The time of the run: from the timer, which only remembers moments and so survives a locked screen, or typed. */
export function TimeField({ time, error, onChange }: TimeFieldProps) {
  const [timer, setTimer] = useState(() => runTimer.read(Date.now()));
  const isRunning = timer !== null && timer.stoppedAt === null;
  const now = useNow(isRunning);
  const keep = (next: RunTimer) => {
    runTimer.write(next);
    setTimer(next);
  };
  const start = () => {
    keep({ startedAt: Date.now(), stoppedAt: null });
    onChange('');
  };
  const stop = (running: RunTimer) => {
    const stopped = { ...running, stoppedAt: Date.now() };
    keep(stopped);
    onChange(formatRunTime(elapsedS(stopped, stopped.stoppedAt)));
  };
  if (isRunning) {
    return (
      <div className={classes.timer}>
        <span className={classes.clock} role="timer" aria-label={texts.timer}>
          {formatRunTime(elapsedS(timer, now))}
        </span>
        <Button size="lg" onClick={() => stop(timer)}>
          {texts.stop}
        </Button>
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
        onChange={(event) => onChange(event.currentTarget.value)}
      />
      <Button variant="default" onClick={start}>
        {time === '' ? texts.startTimer : texts.restart}
      </Button>
    </div>
  );
}
