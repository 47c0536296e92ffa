import { ChoiceRow } from '../../../shared/ui/choice-row.js';
import type { RunErrors, RunValues } from '../model/run-form.js';
import { texts } from '../texts.js';
import { RingField } from './ring-field.js';
import classes from './ride.module.css';

export interface Strokes {
  readonly fork: number | undefined;
  readonly shock: number | undefined;
}

interface RingFieldsProps {
  readonly values: RunValues;
  readonly errors: RunErrors;
  readonly hasShock: boolean;
  /** To touch the ring's place on; without them it is typed. */
  readonly strokesMm?: Strokes;
  readonly onChange: (part: Partial<RunValues>) => void;
}

/** What the rings on fork and shock show, as travel used or travel left. */
export function RingFields({ values, errors, hasShock, strokesMm, onChange }: RingFieldsProps) {
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
        <RingField
          label={texts.forkRing}
          value={values.forkMm}
          error={errors.forkMm}
          strokeMm={strokesMm?.fork}
          onChange={(forkMm) => onChange({ forkMm })}
        />
        {hasShock && (
          <RingField
            label={texts.shockRing}
            value={values.shockMm}
            error={errors.shockMm}
            strokeMm={strokesMm?.shock}
            onChange={(shockMm) => onChange({ shockMm })}
          />
        )}
      </div>
    </>
  );
}
