import { Checkbox, NativeSelect, Stack, Textarea, TextInput } from '@mantine/core';
import type { Track } from '../../../shared/http/reads/tracks.js';
import { ChoiceRow } from '../../../shared/ui/choice-row.js';
import { CONDITIONS } from '../model/choices.js';
import type { RunErrors, RunValues } from '../model/run-form.js';
import { texts } from '../texts.js';
import { BottomOuts } from './bottom-outs.js';

interface MoreFieldsProps {
  readonly values: RunValues;
  readonly errors: RunErrors;
  readonly hasShock: boolean;
  readonly tracks: readonly Track[];
  readonly onChange: (part: Partial<RunValues>) => void;
}

/** What is mostly as it was at the last run, or need not be said. */
export function MoreFields({ values, errors, hasShock, tracks, onChange }: MoreFieldsProps) {
  const track = tracks.find(({ id }) => id === values.trackId)?.name ?? texts.chooseTrack;
  const isWrong = errors.trackId !== undefined || errors.note !== undefined || errors.reason !== undefined;
  return (
    <details open={isWrong || values.trackId === '' || undefined}>
      <summary>
        {track} · {texts.conditions[values.condition]} · {texts.more}
      </summary>
      <Stack>
        <NativeSelect
          label={texts.track}
          value={values.trackId}
          error={errors.trackId}
          // Another track has other sections.
          onChange={(event) => onChange({ trackId: event.currentTarget.value, sections: {} })}
          data={[
            ...(values.trackId === '' ? [{ value: '', label: texts.chooseTrack }] : []),
            ...tracks.map(({ id, name }) => ({ value: id, label: name })),
          ]}
        />
        <ChoiceRow
          label={texts.condition}
          choices={CONDITIONS.map((value) => ({ value, label: texts.conditions[value] }))}
          value={values.condition}
          onChange={(condition) => onChange({ condition })}
        />
        <BottomOuts values={values} hasShock={hasShock} onChange={onChange} />
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
        <Textarea
          label={texts.note}
          autosize
          minRows={1}
          value={values.note}
          error={errors.note}
          onChange={(event) => onChange({ note: event.currentTarget.value })}
        />
      </Stack>
    </details>
  );
}
