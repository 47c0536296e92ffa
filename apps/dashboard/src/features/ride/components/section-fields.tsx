import { Stack, Text, TextInput } from '@mantine/core';
import type { RunErrors, RunValues } from '../model/run-form.js';
import { texts } from '../texts.js';
import classes from './ride.module.css';

interface SectionFieldsProps {
  /** Names of the track's sections, in riding order. */
  readonly sections: readonly string[];
  readonly values: RunValues;
  readonly errors: RunErrors;
  readonly onChange: (part: Partial<RunValues>) => void;
}

/** The time of each section of the track, where it has any; those that nobody took stay empty. */
export function SectionFields({ sections, values, errors, onChange }: SectionFieldsProps) {
  if (sections.length === 0) return null;
  return (
    <Stack gap="xs" role="group" aria-label={texts.sections}>
      <Text fw={600}>{texts.sections}</Text>
      <div className={classes.pair}>
        {sections.map((section) => (
          <TextInput
            key={section}
            label={section}
            inputMode="text"
            autoComplete="off"
            value={values.sections[section] ?? ''}
            error={errors.sections !== undefined}
            onChange={(event) =>
              onChange({ sections: { ...values.sections, [section]: event.currentTarget.value } })
            }
          />
        ))}
      </div>
      {errors.sections !== undefined && (
        <Text size="sm" c="var(--mantine-color-error)" role="alert">
          {errors.sections}
        </Text>
      )}
    </Stack>
  );
}
