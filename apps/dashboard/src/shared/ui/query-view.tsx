import type { ReactNode } from 'react';
import type { Readable } from '../http/joined.js';
import { ErrorView } from './error-view.js';
import classes from './page.module.css';
import { texts } from './texts.js';

interface QueryViewProps<Data> {
  readonly query: Readable<Data>;
  /** True where there is an answer but nothing in it yet. */
  readonly isEmpty?: (data: Data) => boolean;
  /** What to do next where there is nothing yet. */
  readonly empty?: ReactNode;
  readonly children: (data: Data) => ReactNode;
}

/** The four states of everything that is read: loading, error, empty, data. */
export function QueryView<Data>({ query, isEmpty, empty, children }: QueryViewProps<Data>) {
  if (query.data !== undefined) {
    return isEmpty?.(query.data) ? empty : children(query.data);
  }
  if (query.error !== null) return <ErrorView error={query.error} onRetry={() => void query.refetch()} />;
  return <Loading />;
}

export function Loading() {
  return (
    <div role="status" className={classes.loading}>
      <span className="ll-heard-only">{texts.loading}</span>
      <div />
      <div />
      <div />
    </div>
  );
}
