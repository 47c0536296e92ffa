import { Button, Group } from '@mantine/core';
import { NumberField } from '../../../shared/ui/number-field.js';
import { texts } from '../measure-texts.js';
import classes from './workshop.module.css';

interface TryField<Name extends string> {
  readonly name: Name;
  readonly label: string;
  readonly unit: string;
  readonly hint?: string;
}

interface TryRowsProps<Name extends string> {
  /** Where the tries stand in the form: the first part of the path of their errors. */
  readonly path: string;
  readonly fields: readonly TryField<Name>[];
  readonly rows: readonly Readonly<Record<Name, string>>[];
  readonly errors: Readonly<Record<string, string>>;
  readonly onChange: (rows: readonly Readonly<Record<Name, string>>[]) => void;
  readonly newRow: () => Readonly<Record<Name, string>>;
}

/** Readings of one try after another. */
export function TryRows<Name extends string>(props: TryRowsProps<Name>) {
  const { path, fields, rows, errors, onChange, newRow } = props;
  return (
    <>
      <ol className={classes.rows}>
        {rows.map((row, i) => (
          // Tries have no identity but their place in the order.
          <li key={i}>
            <fieldset className={classes.row}>
              <legend>{texts.try(i + 1)}</legend>
              <div className={classes.figures}>
                {fields.map(({ name, label, unit, hint }) => (
                  <NumberField
                    key={name}
                    label={label}
                    description={hint}
                    unit={unit}
                    value={row[name]}
                    error={errors[`${path}.${i}.${name}`]}
                    onText={(text) => onChange(rows.with(i, { ...row, [name]: text }))}
                  />
                ))}
                {rows.length > 1 && (
                  <Button
                    variant="subtle"
                    className="ll-screen-only"
                    onClick={() => onChange(rows.toSpliced(i, 1))}
                  >
                    {texts.remove(i + 1)}
                  </Button>
                )}
              </div>
            </fieldset>
          </li>
        ))}
      </ol>
      <Group className="ll-screen-only">
        <Button variant="default" onClick={() => onChange([...rows, newRow()])}>
          {texts.more}
        </Button>
      </Group>
    </>
  );
}
