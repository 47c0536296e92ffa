import type { ReactNode } from 'react';
import classes from './note.module.css';

interface NoteProps {
  /** The word that goes with the sign: "Warning", "Not saved". */
  readonly word: string;
  readonly children: ReactNode;
  /** Announced at once where it appears after an act. */
  readonly urgent?: boolean;
}

/** The one warning of the pages: a sign, a word and the warning tone, never the tone alone. */
export function Warning({ word, children, urgent = false }: NoteProps) {
  return (
    <div className={classes.warning} role={urgent ? 'alert' : 'note'}>
      <span aria-hidden="true" className={classes.sign}>
        ⚠
      </span>
      <div>
        <strong>{word}</strong> {children}
      </div>
    </div>
  );
}

/** A warning in a line of a table or a list: the sign and the words. */
export function WarningMark({ children }: { children: ReactNode }) {
  return (
    <span className={classes.mark}>
      <span aria-hidden="true">⚠ </span>
      {children}
    </span>
  );
}

/** The mark of a value nobody has measured. */
export function Assumed() {
  return <span className={classes.assumed}>assumed</span>;
}
