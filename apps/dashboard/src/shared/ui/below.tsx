import { useState, type ReactNode } from 'react';

/**
 * Whether something was asked for: there is an answer, or none is to be had now. What is tried again without signal is
 * not waited for.
 */
export const isAsked = ({ data, failureCount }: { readonly data: unknown; readonly failureCount: number }) =>
  data !== undefined || failureCount > 0;

interface BelowProps {
  /** Whether what stands above is there, or will not come. */
  readonly isReady: boolean;
  readonly children: ReactNode;
}

/**
 * What stands below something of a height that nobody knows before it is read: it waits for it, so that nothing is pushed
 * away from under somebody's finger. Once there it stays, also while what stands above is read again.
 */
export function Below({ isReady, children }: BelowProps) {
  const [wasReady, setWasReady] = useState(isReady);
  if (isReady && !wasReady) setWasReady(true);
  return isReady || wasReady ? children : null;
}
