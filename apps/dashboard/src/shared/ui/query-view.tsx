import type { ReactNode } from 'react';
import type { Readable } from '../http/joined.js';
import { ErrorView } from './error-view.js';
import { Page } from './page.js';
import classes from './page.module.css';
import { texts } from './texts.js';

interface QueryViewProps<Data> {
  readonly query: Readable<Data>;
  /** True where there is an answer but nothing in it yet. */
  readonly isEmpty?: (data: Data) => boolean;
  /** What to do next where there is nothing yet. */
  readonly empty?: ReactNode;
  /** The page's title as long as what it is called could not be read. */
  readonly page?: string;
  readonly children: (data: Data) => ReactNode;
}

/** The four states of everything that is read: loading, error, empty, data. */
export function QueryView<Data>({ query, isEmpty, empty, page, children }: QueryViewProps<Data>) {
  if (query.data !== undefined) {
    return isEmpty?.(query.data) ? empty : children(query.data);
  }
  if (query.error !== null) {
    const failed = <ErrorView error={query.error} onRetry={() => void query.refetch()} />;
    return page === undefined ? failed : <Page title={page}>{failed}</Page>;
  }
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
