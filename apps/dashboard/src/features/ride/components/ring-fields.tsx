import { Checkbox } from '@mantine/core';
import { ChoiceRow } from '../../../shared/ui/choice-row.js';
import { NumberField } from '../../../shared/ui/number-field.js';
import type { RunErrors, RunValues } from '../model/run-form.js';
import { texts } from '../texts.js';
import classes from './ride.module.css';

interface RingFieldsProps {
  readonly values: RunValues;
  readonly errors: RunErrors;
  readonly hasShock: boolean;
  readonly onChange: (part: Partial<RunValues>) => void;
}

/** What the rings on fork and shock show, as travel used or travel left. */
export function RingFields({ values, errors, hasShock, onChange }: RingFieldsProps) {
  return (
    <>
      <ChoiceRow
        label={texts.ring}
        choices={[
          { value: 'used', label: texts.ringAs.used },
          { value: 'left', label: texts.ringAs.left },
        ]}
        value={values.ringAs}
        onChange={(ringAs) => onChange({ ringAs })}
      />
      <div className={classes.pair}>
        <div>
          <NumberField
            label={texts.forkRing}
            unit="mm"
            value={values.forkMm}
            error={errors.forkMm}
            onChange={(event) => onChange({ forkMm: event.currentTarget.value })}
          />
          <Checkbox
            mt="sm"
            label={texts.forkBottomed}
            checked={values.forkBottomed}
            onChange={(event) => onChange({ forkBottomed: event.currentTarget.checked })}
          />
        </div>
        {hasShock && (
          <div>
            <NumberField
              label={texts.shockRing}
              unit="mm"
              value={values.shockMm}
              error={errors.shockMm}
              onChange={(event) => onChange({ shockMm: event.currentTarget.value })}
            />
            <Checkbox
              mt="sm"
              label={texts.shockBottomed}
              checked={values.shockBottomed}
              onChange={(event) => onChange({ shockBottomed: event.currentTarget.checked })}
            />
          </div>
        )}
      </div>
    </>
  );
}
