import { Button, TextInput } from '@mantine/core';
import { useId, type KeyboardEvent } from 'react';
import { shownUnit } from '../../../shared/format/units.js';
import { WarningMark } from '../../../shared/ui/note.js';
import { useShownText } from '../../../shared/ui/use-shown-text.js';
import { texts } from '../texts.js';
import classes from './workbench.module.css';

interface StepperProps {
  readonly label: string;
  readonly unit?: string;
  readonly whole: boolean;
  /** What stands in the field: text, so that nothing typed is lost or rewritten. */
  readonly value: string;
  readonly hint: string;
  /** Why what is typed cannot be, or why the last press was refused. */
  readonly problem: string | undefined;
  readonly onType: (text: string) => void;
  readonly onStep: (by: 1 | -1) => void;
}

/** A figure that is moved a step at a time, by thumb or by arrow key, or typed. A limit refuses here, with the reason. */
export function Stepper({ label, unit, whole, value, hint, problem, onType, onStep }: StepperProps) {
  const id = useId();
  const field = useShownText(unit, value, onType);
  const arrow = (event: KeyboardEvent) => {
    const by = ({ ArrowUp: 1, ArrowDown: -1 } as const)[event.key];
    if (by === undefined) return;
    event.preventDefault();
    onStep(by);
  };
  return (
    <div role="group" aria-label={label} className={classes.stepper}>
      <label htmlFor={id}>
        {label} {unit !== undefined && <span className={classes.unit}>{shownUnit(unit)}</span>}
      </label>
      <div className={classes.keys}>
        <Button variant="default" aria-label={`${label}: ${texts.less}`} onClick={() => onStep(-1)}>
          −
        </Button>
        <TextInput
          id={id}
          autoComplete="off"
          inputMode={whole ? 'numeric' : 'decimal'}
          value={field.shown}
          error={problem !== undefined}
          aria-describedby={`${id}-hint ${id}-problem`}
          onChange={(event) => field.type(event.currentTarget.value)}
          onKeyDown={arrow}
        />
        <Button variant="default" aria-label={`${label}: ${texts.more}`} onClick={() => onStep(1)}>
          +
        </Button>
      </div>
      <p id={`${id}-hint`} className={classes.hint}>
        {hint}
      </p>
      <p id={`${id}-problem`} className={classes.problem} role="alert">
        {problem !== undefined && <WarningMark>{problem}</WarningMark>}
      </p>
    </div>
  );
}
