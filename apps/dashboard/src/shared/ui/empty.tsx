import type { ReactNode } from 'react';
import classes from './page.module.css';

interface EmptyProps {
  readonly title: string;
  readonly children: ReactNode;
  /** The way on: a link or a button. */
  readonly action?: ReactNode;
  /** True where it is all that the page has to say: then its title is the page's. */
  readonly isPage?: boolean;
  /** True in a part of a page that has its own heading. */
  readonly isPart?: boolean;
}

/** Nothing here yet, and what to do next. */
export function Empty({ title, children, action, isPage = false, isPart = false }: EmptyProps) {
  const Heading = isPage ? 'h1' : isPart ? 'h3' : 'h2';
  return (
    <div className={classes.empty}>
      <Heading className={classes.second}>{title}</Heading>
      <p className={classes.words}>{children}</p>
      {action}
    </div>
  );
}
