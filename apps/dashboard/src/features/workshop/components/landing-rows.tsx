import { Button } from '@mantine/core';
import { NumberField } from '../../../shared/ui/number-field.js';
import { LANDING_TEXTS, texts } from '../drop-texts.js';
import { firstToType, LANDING_FIELDS, type LandingValues } from '../model/drop-form.js';
import classes from './workshop.module.css';

interface LandingRowsProps {
  readonly landings: readonly LandingValues[];
  /** By the path of the field. */
  readonly errors: Readonly<Record<string, string>>;
  readonly onChange: (landings: readonly LandingValues[]) => void;
}

/** One landing after another, in the order ridden; a new one waits for its first empty field. */
export function LandingRows({ landings, errors, onChange }: LandingRowsProps) {
  return (
    <ol className={classes.rows}>
      {landings.map((landing, i) => {
        const typedNext = firstToType(landing);
        return (
          // Landings have no identity but their place in the order.
          <li key={i}>
            <fieldset className={classes.row}>
              <legend>{texts.landing(i + 1)}</legend>
              <div className={classes.figures}>
                {LANDING_FIELDS.map((field) => {
                  const { label, unit, whole } = LANDING_TEXTS[field];
                  return (
                    <NumberField
                      key={field}
                      label={label}
                      whole={whole}
                      {...(unit !== '' && { unit })}
                      autoFocus={field === typedNext}
                      aria-required
                      value={landing[field]}
                      error={errors[`landings.${i}.${field}`]}
                      onText={(text) => onChange(landings.with(i, { ...landing, [field]: text }))}
                    />
                  );
                })}
                <Button
                  variant="subtle"
                  className="ll-screen-only"
                  onClick={() => onChange(landings.toSpliced(i, 1))}
                >
                  {texts.remove(i + 1)}
                </Button>
              </div>
            </fieldset>
          </li>
        );
      })}
    </ol>
  );
}
