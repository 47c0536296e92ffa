import { lazy, Suspense, type ReactNode } from 'react';
import { Loading } from '../../shared/ui/query-view.js';

const Kit = lazy(() => import('./kit.js').then((module) => ({ default: module.Kit })));

/** The kit around what needs it, fetched when it is needed first. */
export function LazyKit({ children }: { children: ReactNode }) {
  return (
    <Suspense fallback={<Loading />}>
      <Kit>{children}</Kit>
    </Suspense>
  );
}
