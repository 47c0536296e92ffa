import type { ChangeEvent } from 'react';
import classes from './file-field.module.css';

interface FileFieldProps {
  readonly label: string;
  readonly accept: string;
  readonly onChange: (event: ChangeEvent<HTMLInputElement>) => void;
}

/** The browser's own field for a file, in our measures. */
export function FileField({ label, accept, onChange }: FileFieldProps) {
  return (
    <label className={classes.file}>
      <span>{label}</span>
      <input type="file" accept={accept} onChange={onChange} />
    </label>
  );
}
