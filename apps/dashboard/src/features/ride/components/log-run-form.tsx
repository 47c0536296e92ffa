import { Button } from '@mantine/core';
import { useState } from 'react';
import type { Track } from '../../../shared/http/reads/tracks.js';
import { Warning } from '../../../shared/ui/note.js';
import { obviousErrors, type RunErrors, type RunValues } from '../model/run-form.js';
import { texts } from '../texts.js';
import { Feel } from './feel.js';
import { MoreFields } from './more-fields.js';
import { RingFields, type Strokes } from './ring-fields.js';
import classes from './ride.module.css';
import { SectionFields } from './section-fields.js';
import { TimeField } from './time-field.js';
import { useSaveRun, type Saved } from './use-save-run.js';

export interface LogRunFormProps extends Saved {
  readonly hasShock: boolean;
  readonly strokesMm: Strokes;
  readonly tracks: readonly Track[];
  /** What is most likely right, or what is to be corrected. */
  readonly initial: RunValues;
}

/** A run in a few touches: timer, two rings, feel, save. Everything but the track may stay empty. */
export function LogRunForm(props: LogRunFormProps) {
  const { hasShock, strokesMm, tracks } = props;
  const [values, setValues] = useState(props.initial);
  const [errors, setErrors] = useState<RunErrors>({});
  const saving = useSaveRun(props, setErrors);
  const change = (part: Partial<RunValues>) => setValues((before) => ({ ...before, ...part }));

  const sections = tracks.find(({ id }) => id === values.trackId)?.sections ?? [];

  const save = (isSpoilt: boolean) => {
    const found = obviousErrors(values);
    setErrors(found);
    if (Object.keys(found).length === 0) void saving.save(values, isSpoilt);
  };

  return (
    <form
      noValidate
      className={classes.form}
      onSubmit={(event) => {
        event.preventDefault();
        save(false);
      }}
    >
      <TimeField time={values.time} error={errors.time} sections={sections} onChange={change} />
      <RingFields
        values={values}
        errors={errors}
        hasShock={hasShock}
        strokesMm={strokesMm}
        onChange={change}
      />
      <Feel ratings={values.ratings} onChange={(ratings) => change({ ratings })} />
      <SectionFields sections={sections} values={values} errors={errors} onChange={change} />
      <MoreFields values={values} errors={errors} hasShock={hasShock} tracks={tracks} onChange={change} />
      <div className={classes.foot}>
        {saving.failure !== null && (
          <Warning word={`${saving.failure.word}.`} urgent>
            {saving.failure.detail}
          </Warning>
        )}
        <Button type="submit" fullWidth size="lg" loading={saving.isSaving}>
          {texts.save}
        </Button>
        <Button variant="default" fullWidth disabled={saving.isSaving} onClick={() => save(true)}>
          {texts.saveSpoilt}
        </Button>
      </div>
    </form>
  );
}
