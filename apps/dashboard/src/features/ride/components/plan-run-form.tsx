import { Button } from '@mantine/core';
import { useState, type FormEvent } from 'react';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import { ChoiceRow } from '../../../shared/ui/choice-row.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { CONDITIONS, type Condition } from '../model/choices.js';
import {
  emptyRun,
  formErrors,
  localDay,
  obviousErrors,
  riddenMessage,
  type RunErrors,
  type RunValues,
} from '../model/run-form.js';
import { texts } from '../texts.js';
import { RunFields } from './run-fields.js';
import classes from './ride.module.css';

/** What is said of a run whose bike, set-up and track are those of a plan. */
type PlanRun = ReturnType<typeof riddenMessage> & { readonly day: string; readonly condition: Condition };

interface PlanRunFormProps {
  readonly track: string;
  /** Names of the track's sections, in riding order. */
  readonly sections: readonly string[];
  readonly hasShock: boolean;
  readonly condition: Condition;
  /** On the button: which run is saved. */
  readonly save: string;
  readonly sending: {
    readonly mutate: (run: PlanRun, then: { onError: (error: Error) => void }) => void;
    readonly error: Error | null;
    readonly isPending: boolean;
  };
}

/** The next run of a plan: everything but what was read off and felt is known. */
export function PlanRunForm({ track, sections, hasShock, condition, save, sending }: PlanRunFormProps) {
  const [values, setValues] = useState(() => emptyRun(track, condition));
  const [errors, setErrors] = useState<RunErrors>({});
  const change = (part: Partial<RunValues>) => setValues((before) => ({ ...before, ...part }));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const found = obviousErrors(values);
    setErrors(found);
    if (Object.keys(found).length > 0) return;
    const run = { ...riddenMessage(values), day: localDay(new Date()), condition: values.condition };
    sending.mutate(run, { onError: (error) => setErrors(formErrors(fieldErrors(error))) });
  };
  return (
    <form onSubmit={submit} noValidate className={classes.form} aria-label={save}>
      <RunFields values={values} errors={errors} hasShock={hasShock} sections={sections} onChange={change} />
      <ChoiceRow
        label={texts.condition}
        choices={CONDITIONS.map((value) => ({ value, label: texts.conditions[value] }))}
        value={values.condition}
        onChange={(chosen) => change({ condition: chosen })}
      />
      <div className={classes.foot}>
        <Failure error={sending.error} />
        <Button type="submit" fullWidth size="lg" loading={sending.isPending}>
          {save}
        </Button>
      </div>
    </form>
  );
}
