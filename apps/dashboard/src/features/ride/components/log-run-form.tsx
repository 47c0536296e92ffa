import { Button, Checkbox, NativeSelect, Stack, Textarea, TextInput } from '@mantine/core';
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
import { Feel } from './feel.js';
import { RingFields } from './ring-fields.js';
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
      <TextInput
        label={texts.time}
        placeholder="2:07.4"
        description={texts.timeHint}
        // Not a numeric keyboard: it has no colon.
        inputMode="text"
        autoComplete="off"
        value={values.time}
        error={errors.time}
        onChange={(event) => change({ time: event.currentTarget.value })}
      />
      <RingFields values={values} errors={errors} hasShock={hasShock} onChange={change} />
      <Feel ratings={values.ratings} onChange={(ratings) => change({ ratings })} />
      <ChoiceRow
        label={texts.outcome}
        choices={[
          { value: 'clean', label: texts.clean },
          { value: 'spoilt', label: texts.spoilt },
        ]}
        value={values.spoilt ? 'spoilt' : 'clean'}
        onChange={(outcome) => change({ spoilt: outcome === 'spoilt' })}
      />
      {values.spoilt && (
        <Stack gap="sm">
          <TextInput
            label={texts.reason}
            value={values.reason}
            error={errors.reason}
            onChange={(event) => change({ reason: event.currentTarget.value })}
          />
          <Checkbox
            label={texts.readingsCount}
            checked={values.readingsCount}
            onChange={(event) => change({ readingsCount: event.currentTarget.checked })}
          />
        </Stack>
      )}
      <Textarea
        label={texts.note}
        autosize
        minRows={1}
        value={values.note}
        error={errors.note}
        onChange={(event) => change({ note: event.currentTarget.value })}
      />
      <div className={classes.foot}>
        <Failure error={log.error} />
        <Button type="submit" fullWidth size="lg" loading={log.isPending}>
          {texts.save}
        </Button>
      </div>
    </form>
  );
}
