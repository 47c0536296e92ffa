import type { QueryClient } from '@tanstack/react-query';
import { keys } from '../shared/http/keys.js';
import { ApiProblem } from '../shared/http/problem.js';

const UNAUTHENTICATED = 401;

/** Calls `onEnded` when the API no longer knows the session, as after a sign-out on another device. */
export function watchSession(queries: QueryClient, onEnded: () => void): () => void {
  return queries.getQueryCache().subscribe((event) => {
    if (event.type !== 'updated' || event.action.type !== 'error') return;
    const { error } = event.action;
    const isAccount = event.query.queryKey[0] === keys.account[0];
    if (isAccount || !(error instanceof ApiProblem) || error.status !== UNAUTHENTICATED) return;
    queries.removeQueries({ queryKey: keys.account });
    onEnded();
  });
}
