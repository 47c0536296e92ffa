import type { ReactNode } from 'react';
import classes from './page.module.css';

interface EmptyProps {
  readonly title: string;
  readonly children: ReactNode;
  /** The way on: a link or a button. */
  readonly action?: ReactNode;
}

/** Nothing here yet, and what to do next. */
export function Empty({ title, children, action }: EmptyProps) {
  return (
    <div className={classes.empty}>
      <h2 className={classes.second}>{title}</h2>
      <p className={classes.words}>{children}</p>
      {action}
    </div>
  );
}
