import { Button, NativeSelect } from '@mantine/core';
import { useState, type FormEvent } from 'react';
import { fieldErrors } from '../../../shared/http/problem.js';
import type { Track } from '../../../shared/http/reads/tracks.js';
import { ChoiceRow } from '../../../shared/ui/choice-row.js';
import { Failure } from '../../../shared/ui/error-view.js';
import { useLogRun } from '../api/log-run.js';
import { CONDITIONS, type Condition } from '../model/choices.js';
import {
  emptyRun,
  formErrors,
  localDay,
  obviousErrors,
  runMessage,
  type RunErrors,
  type RunValues,
} from '../model/run-form.js';
import { texts } from '../texts.js';
import { RunFields } from './run-fields.js';
import classes from './ride.module.css';

interface LogRunFormProps {
  readonly teamId: string;
  readonly bikeId: string;
  readonly hasShock: boolean;
  readonly tracks: readonly Track[];
  /** What is most likely right: where and how it was ridden last. */
  readonly likely: { readonly trackId: string; readonly condition: Condition };
  readonly onSaved: () => void;
}

/** A run in a few touches: everything but the track may stay empty. */
export function LogRunForm({ teamId, bikeId, hasShock, tracks, likely, onSaved }: LogRunFormProps) {
  const log = useLogRun(teamId);
  const [values, setValues] = useState(() => emptyRun(likely.trackId, likely.condition));
  const [errors, setErrors] = useState<RunErrors>({});
  const change = (part: Partial<RunValues>) => setValues((before) => ({ ...before, ...part }));

  const submit = (event: FormEvent) => {
    event.preventDefault();
    const found = obviousErrors(values);
    setErrors(found);
    if (Object.keys(found).length > 0) return;
    log.mutate(runMessage(values, bikeId, localDay(new Date())), {
      onSuccess: onSaved,
      onError: (error) => setErrors(formErrors(fieldErrors(error))),
    });
  };

  return (
    <form onSubmit={submit} noValidate className={classes.form}>
      <NativeSelect
        label={texts.track}
        value={values.trackId}
        error={errors.trackId}
        onChange={(event) => change({ trackId: event.currentTarget.value })}
        data={[
          ...(values.trackId === '' ? [{ value: '', label: texts.chooseTrack }] : []),
          ...tracks.map(({ id, name }) => ({ value: id, label: name })),
        ]}
      />
      <ChoiceRow
        label={texts.condition}
        choices={CONDITIONS.map((value) => ({ value, label: texts.conditions[value] }))}
        value={values.condition}
        onChange={(condition) => change({ condition })}
      />
      <RunFields values={values} errors={errors} hasShock={hasShock} onChange={change} />
      <div className={classes.foot}>
        <Failure error={log.error} />
        <Button type="submit" fullWidth size="lg" loading={log.isPending}>
          {texts.save}
        </Button>
      </div>
    </form>
  );
}
