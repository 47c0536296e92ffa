import { useId } from 'react';
import { formatMoment } from '../../../shared/format/time.js';
import { CAUTIONS, stepWords } from '../../../shared/format/work-step-words.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { WarningMark } from '../../../shared/ui/note.js';
import { useTickStep, type WorkStep } from '../api/work-orders.js';
import { texts } from '../texts.js';
import classes from './work-orders.module.css';

interface StepLineProps {
  readonly teamId: string;
  readonly step: WorkStep;
  readonly canTick: boolean;
}

/** A step with the box to tick it; on paper an empty box, or a crossed one. */
export function StepLine({ teamId, step, canTick }: StepLineProps) {
  const tick = useTickStep(teamId, step.id);
  const id = useId();
  const isDone = tick.isPending ? tick.variables : step.doneAt !== null;
  return (
    <li>
      <label className={classes.step}>
        <input
          type="checkbox"
          checked={isDone}
          disabled={!canTick || tick.isPending}
          aria-describedby={step.doneAt === null ? undefined : id}
          onChange={(event) => tick.mutate(event.currentTarget.checked)}
        />
        <span>
          {CAUTIONS.has(step.step) && (
            <>
              <WarningMark>{texts.caution}</WarningMark>{' '}
            </>
          )}
          {stepWords(step)}
        </span>
      </label>
      {step.doneAt !== null && (
        <span id={id} className={classes.by}>
          {texts.doneBy(step.doneByName ?? '', formatMoment(step.doneAt))}
        </span>
      )}
      <Failure error={tick.error} word={texts.notTicked} />
    </li>
  );
}
