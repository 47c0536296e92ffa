import { NativeSelect } from '@mantine/core';
import type { Rider } from '../../../shared/http/reads/riders.js';
import { sheetTexts as texts } from '../texts.js';

export const TEAM = 'team';

interface WhichSheetsProps {
  readonly riders: readonly Rider[];
  /** `team`, the id of a rider, or nothing for all. */
  readonly sheet: string | undefined;
  readonly onChange: (sheet: string | undefined) => void;
}

/** Which sheets are shown and printed. */
export function WhichSheets({ riders, sheet, onChange }: WhichSheetsProps) {
  return (
    <NativeSelect
      className="ll-screen-only"
      label={texts.which}
      maw="24rem"
      value={sheet ?? ''}
      onChange={({ currentTarget: { value } }) => onChange(value === '' ? undefined : value)}
      data={[
        { value: '', label: texts.all },
        { value: TEAM, label: texts.teamSheet },
        ...riders.map(({ id, name }) => ({ value: id, label: texts.riderSheet(name) })),
      ]}
    />
  );
}
