import { Checkbox, Stack, Textarea, TextInput } from '@mantine/core';
import { ChoiceRow } from '../../../shared/ui/choice-row.js';
import type { RunErrors, RunValues } from '../model/run-form.js';
import { myBikeTexts } from '../my-bike-texts.js';
import { texts } from '../texts.js';
import { BottomOuts } from './bottom-outs.js';
import { Feel } from './feel.js';
import { RingFields } from './ring-fields.js';
import { SectionFields } from './section-fields.js';

interface RunFieldsProps {
  readonly values: RunValues;
  readonly errors: RunErrors;
  readonly hasShock: boolean;
  /** Names of the track's sections, in riding order. */
  readonly sections: readonly string[];
  readonly onChange: (part: Partial<RunValues>) => void;
}

/** What was read off and felt on a run, and whether a mistake spoilt it; everything may stay empty. */
export function RunFields({ values, errors, hasShock, sections, onChange }: RunFieldsProps) {
  return (
    <>
      <TextInput
        label={texts.time}
        placeholder="2:07.4"
        description={texts.timeHint}
        // Not a numeric keyboard: it has no colon.
        inputMode="text"
        autoComplete="off"
        value={values.time}
        error={errors.time}
        onChange={(event) => onChange({ time: event.currentTarget.value })}
      />
      <SectionFields sections={sections} values={values} errors={errors} onChange={onChange} />
      <RingFields values={values} errors={errors} hasShock={hasShock} onChange={onChange} />
      <BottomOuts values={values} hasShock={hasShock} onChange={onChange} />
      <Feel ratings={values.ratings} onChange={(ratings) => onChange({ ratings })} />
      <ChoiceRow
        label={texts.outcome}
        choices={[
          { value: 'clean', label: texts.clean },
          { value: 'spoilt', label: myBikeTexts.spoilt },
        ]}
        value={values.spoilt ? 'spoilt' : 'clean'}
        onChange={(outcome) => onChange({ spoilt: outcome === 'spoilt' })}
      />
      {values.spoilt && (
        <Stack gap="sm">
          <TextInput
            label={texts.reason}
            value={values.reason}
            error={errors.reason}
            onChange={(event) => onChange({ reason: event.currentTarget.value })}
          />
          <Checkbox
            label={texts.readingsCount}
            checked={values.readingsCount}
            onChange={(event) => onChange({ readingsCount: event.currentTarget.checked })}
          />
        </Stack>
      )}
      <Textarea
        label={texts.note}
        autosize
        minRows={1}
        value={values.note}
        error={errors.note}
        onChange={(event) => onChange({ note: event.currentTarget.value })}
      />
    </>
  );
}
