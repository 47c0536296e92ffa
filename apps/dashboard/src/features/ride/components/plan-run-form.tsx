import { Button } from '@mantine/core';
import { useState, type FormEvent } from 'react';
import { ChoiceRow } from '../../../shared/ui/choice-row.js';
import { Warning } from '../../../shared/ui/note.js';
import { CONDITIONS, type Condition } from '../model/choices.js';
import { emptyRun, obviousErrors, type RunErrors, type RunValues } from '../model/run-form.js';
import { texts } from '../texts.js';
import { RunFields } from './run-fields.js';
import classes from './ride.module.css';
import { useSaveRun, type Saved } from './use-save-run.js';

interface PlanRunFormProps extends Omit<Saved, 'tracks' | 'corrects'> {
  readonly track: { readonly id: string; readonly name: string; readonly sections: readonly string[] };
  readonly hasShock: boolean;
  readonly condition: Condition;
  /** On the button: which run is saved. */
  readonly save: string;
}

/** The next run of a plan: everything but what was read off and felt is known. Kept on the device before it is sent. */
export function PlanRunForm({ track, hasShock, condition, save, ...saved }: PlanRunFormProps) {
  const [values, setValues] = useState(() => emptyRun(track.id, condition));
  const [errors, setErrors] = useState<RunErrors>({});
  const saving = useSaveRun({ ...saved, tracks: [track], corrects: undefined }, setErrors);
  const change = (part: Partial<RunValues>) => setValues((before) => ({ ...before, ...part }));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const found = obviousErrors(values);
    setErrors(found);
    if (Object.keys(found).length === 0) void saving.save(values, values.spoilt);
  };
  return (
    <form onSubmit={submit} noValidate className={classes.form} aria-label={save}>
      <RunFields
        values={values}
        errors={errors}
        hasShock={hasShock}
        sections={track.sections}
        onChange={change}
      />
      <ChoiceRow
        label={texts.condition}
        choices={CONDITIONS.map((value) => ({ value, label: texts.conditions[value] }))}
        value={values.condition}
        onChange={(chosen) => change({ condition: chosen })}
      />
      <div className={classes.foot}>
        {saving.failure !== null && (
          <Warning word={`${saving.failure.word}.`} urgent>
            {saving.failure.detail}
          </Warning>
        )}
        <Button type="submit" fullWidth size="lg" loading={saving.isSaving}>
          {save}
        </Button>
      </div>
    </form>
  );
}
