import { Checkbox } from '@mantine/core';
import type { RunValues } from '../model/run-form.js';
import { texts } from '../texts.js';

interface BottomOutsProps {
  readonly values: RunValues;
  readonly hasShock: boolean;
  readonly onChange: (part: Partial<RunValues>) => void;
}

/** Whether an end was felt to bottom out. */
export function BottomOuts({ values, hasShock, onChange }: BottomOutsProps) {
  return (
    <>
      <Checkbox
        label={texts.forkBottomed}
        checked={values.forkBottomed}
        onChange={(event) => onChange({ forkBottomed: event.currentTarget.checked })}
      />
      {hasShock && (
        <Checkbox
          label={texts.shockBottomed}
          checked={values.shockBottomed}
          onChange={(event) => onChange({ shockBottomed: event.currentTarget.checked })}
        />
      )}
    </>
  );
}
