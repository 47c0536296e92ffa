import { useState } from 'react';
import { formatRunTime } from '../../../shared/format/time.js';
import { elapsedS, runTimer } from '../model/run-timer.js';
import { myBikeTexts } from '../my-bike-texts.js';
import { useNow } from './use-now.js';
import classes from './ride.module.css';

/** Says on the first page that a timer runs or has run. */
export function RunUnderWay() {
  const [timer] = useState(() => runTimer.read(Date.now()));
  const now = useNow(timer !== null && timer.stoppedAt === null);
  if (timer === null) return null;
  return (
    <div className={classes.timer}>
      <span>{myBikeTexts.running}</span>
      <span className={classes.clock}>{formatRunTime(elapsedS(timer, now))}</span>
    </div>
  );
}
