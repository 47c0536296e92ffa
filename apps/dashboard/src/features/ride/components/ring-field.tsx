import { parseNumber } from '../../../shared/format/parse.js';
import { NumberField } from '../../../shared/ui/number-field.js';
import { withUnit } from '../../../shared/format/with-unit.js';
import classes from './ride.module.css';

interface RingFieldProps {
  readonly label: string;
  readonly value: string;
  readonly error: string | undefined;
  /** Where the scale ends, mm; undefined while it is not known here. */
  readonly strokeMm: number | undefined;
  readonly onChange: (mm: string) => void;
}

/** A ring reading: one touch on the stroke to scale, or typed. */
export function RingField({ label, value, error, strokeMm, onChange }: RingFieldProps) {
  const typed = parseNumber(value);
  const isRead = typed !== null && !Number.isNaN(typed);
  return (
    <div>
      <NumberField label={label} unit="mm" value={value} error={error} onText={onChange} />
      {strokeMm !== undefined && (
        <input
          type="range"
          className={isRead ? classes.slider : `${classes.slider} ${classes.unread}`}
          aria-label={`${label}, on the stroke`}
          aria-valuetext={isRead ? withUnit(value, 'mm') : 'not read'}
          min={0}
          max={Math.floor(strokeMm)}
          step={1}
          value={isRead ? typed : 0}
          onChange={(event) => onChange(event.currentTarget.value)}
          // A touch on the very end of the scale changes nothing there, and is a reading all the same.
          onClick={(event) => onChange(event.currentTarget.value)}
        />
      )}
    </div>
  );
}
