import { Checkbox, NativeSelect, Stack } from '@mantine/core';
import { ChoiceRow } from '../../../shared/ui/choice-row.js';
import { NumberField } from '../../../shared/ui/number-field.js';
import type { PlanErrors, PlanValues } from '../model/plan-form.js';
import { texts } from '../texts.js';
import classes from './plans.module.css';

interface SizeFieldsProps {
  readonly values: PlanValues;
  readonly errors: PlanErrors;
  readonly onChange: (part: Partial<PlanValues>) => void;
}

/** How often it is ridden, or what is to be told; and how the day is arranged. */
export function SizeFields({ values, errors, onChange }: SizeFieldsProps) {
  return (
    <Stack gap="md">
      <ChoiceRow
        label={texts.sizeBy}
        choices={[
          { value: 'runs', label: texts.byRuns },
          { value: 'difference', label: texts.byDifference },
        ]}
        value={values.sizeBy}
        onChange={(sizeBy) => onChange({ sizeBy })}
      />
      <div className={classes.pair}>
        {values.sizeBy === 'runs' ? (
          <NumberField
            label={texts.runs}
            whole
            value={values.runs}
            error={errors['runs']}
            onText={(text) => onChange({ runs: text })}
          />
        ) : (
          <NumberField
            label={texts.difference}
            unit="% of time"
            value={values.difference}
            error={errors['difference']}
            onText={(text) => onChange({ difference: text })}
          />
        )}
        <NumberField
          label={texts.margin}
          description={texts.marginHint}
          unit="% of time"
          value={values.margin}
          error={errors['margin']}
          onText={(text) => onChange({ margin: text })}
        />
      </div>
      <Checkbox
        label={texts.isBlind}
        description={texts.blindHint}
        checked={values.blind}
        onChange={(event) => onChange({ blind: event.currentTarget.checked })}
      />
      <details>
        <summary>{texts.orderDetails}</summary>
        <Stack gap="md">
          <NumberField
            label={texts.warmUps}
            whole
            value={values.warmUps}
            error={errors['warmUps']}
            onText={(text) => onChange({ warmUps: text })}
          />
          <NativeSelect
            label={texts.looks}
            description={texts.looksHint}
            value={values.looks}
            onChange={(event) => onChange({ looks: event.currentTarget.value as PlanValues['looks'] })}
            data={Object.entries(texts.looksAre).map(([value, label]) => ({ value, label }))}
          />
          <NativeSelect
            label={texts.trend}
            description={texts.trendHint}
            value={values.trend}
            onChange={(event) => onChange({ trend: event.currentTarget.value as PlanValues['trend'] })}
            data={Object.entries(texts.trendIs).map(([value, label]) => ({ value, label }))}
          />
        </Stack>
      </details>
    </Stack>
  );
}
