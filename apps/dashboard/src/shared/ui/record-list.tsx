import type { ReactNode } from 'react';
import classes from './record-list.module.css';

/** Records that are appended to and never edited, newest first. */
export const RecordList = ({ children }: { children: ReactNode }) => (
  <ul className={classes.list}>{children}</ul>
);

interface RecordRowProps {
  readonly name: string;
  /** It was taken back: struck out, and still there. */
  readonly isGone: boolean;
  readonly act: ReactNode;
  readonly children: ReactNode;
}

export function RecordRow({ name, isGone, act, children }: RecordRowProps) {
  return (
    <li>
      <div>
        <strong className={isGone ? classes.gone : undefined}>{name}</strong>
        {children}
      </div>
      {act}
    </li>
  );
}
