import { useId } from 'react';
import classes from './choice-row.module.css';

interface ChoiceRowProps<Value extends string | number> {
  readonly label: string;
  readonly hint?: string;
  readonly choices: readonly { readonly value: Value; readonly label: string }[];
  /** Null: nothing chosen yet, which is an answer too. */
  readonly value: Value | null;
  readonly onChange: (value: Value) => void;
}

/** A few words or figures to choose one from by thumb: plain radio buttons, each as large as a finger. */
export function ChoiceRow<Value extends string | number>(props: ChoiceRowProps<Value>) {
  const name = useId();
  return (
    <fieldset className={classes.row}>
      <legend>
        {props.label}
        {props.hint !== undefined && <span className={classes.hint}> · {props.hint}</span>}
      </legend>
      <div className={classes.choices}>
        {props.choices.map(({ value, label }) => (
          <label key={value} className={classes.choice}>
            <input
              type="radio"
              name={name}
              checked={value === props.value}
              onChange={() => props.onChange(value)}
            />
            <span>{label}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
