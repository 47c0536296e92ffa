import { setupChanges } from '../../../shared/format/setup-changes.js';
import { formatDay } from '../../../shared/format/time.js';
import type { Decision } from '../../../shared/http/reads/decisions.js';
import type { Setup } from '../../../shared/http/reads/setups.js';
import { myBikeTexts } from '../my-bike-texts.js';
import { MyEnd, type MyEndProps } from './my-end.js';
import classes from './ride.module.css';

type End = Pick<MyEndProps, 'today' | 'isAssumed' | 'stroke'>;

interface MySetupProps {
  readonly now: Setup;
  readonly before: Setup | undefined;
  readonly decision: Decision | undefined;
  /** The set-up of the last run; undefined before the first. */
  readonly lastRidden: string | undefined;
  readonly fork: End;
  readonly shock: End;
}

/** The own set-up in figures that are read at arm's length, and what changed since the last ride. */
export function MySetup({ now, before, decision, lastRidden, fork, shock }: MySetupProps) {
  const changes = before === undefined ? '' : `: ${setupChanges(before, now).join('; ')}`;
  const day = formatDay(now.createdAt);
  const isNew = lastRidden !== undefined && lastRidden !== now.id;
  return (
    <>
      <div className={classes.ends}>
        <MyEnd name={myBikeTexts.fork} fill={now.fork} {...fork} />
        {now.shock !== null && <MyEnd name={myBikeTexts.shock} fill={now.shock} {...shock} />}
      </div>
      <div>
        <p className={classes.changed}>
          {isNew ? myBikeTexts.changedSinceRide(day) : myBikeTexts.changed(day)}
          {changes}
        </p>
        {decision?.toSetupId === now.id && <p className={classes.reason}>“{decision.reason}”</p>}
        {lastRidden === now.id && <p className={classes.quiet}>{myBikeTexts.unchangedSinceRide}</p>}
      </div>
    </>
  );
}
