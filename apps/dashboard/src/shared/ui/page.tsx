import { useEffect, useId, type ReactNode } from 'react';
import classes from './page.module.css';

interface PageProps {
  readonly title: string;
  readonly lead?: ReactNode;
  /** Links and buttons that belong to the whole page. */
  readonly actions?: ReactNode;
  /** The content; left out where it is not under the heading, as on paper. */
  readonly children?: ReactNode;
}

/** The frame of every page: one first heading, what can be done here, and the content. */
export function Page({ title, lead, actions, children }: PageProps) {
  useEffect(() => {
    document.title = `${title} · Loamledger`;
  }, [title]);
  return (
    <div className={classes.page}>
      <div className={classes.head}>
        <div>
          <h1 className={classes.first}>{title}</h1>
          {lead !== undefined && <div className={classes.lead}>{lead}</div>}
        </div>
        {actions !== undefined && <div className={`${classes.actions} ll-screen-only`}>{actions}</div>}
      </div>
      {children}
    </div>
  );
}

interface SectionProps {
  readonly title: string;
  readonly actions?: ReactNode;
  readonly children: ReactNode;
}

/** A part of a page under its own heading. */
export function Section({ title, actions, children }: SectionProps) {
  const headingId = useId();
  return (
    <section className={classes.section} aria-labelledby={headingId}>
      <div className={classes.head}>
        <h2 id={headingId} className={classes.second}>
          {title}
        </h2>
        {actions !== undefined && <div className={`${classes.actions} ll-screen-only`}>{actions}</div>}
      </div>
      {children}
    </section>
  );
}
