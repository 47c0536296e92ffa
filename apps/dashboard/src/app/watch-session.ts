import type { QueryClient } from '@tanstack/react-query';
import { keys } from '../shared/http/keys.js';
import { ApiProblem } from '../shared/http/problem.js';

const UNAUTHENTICATED = 401;

/** Calls `onEnded` when the API no longer knows a session that the page had, as after a sign-out on another device. */
export function watchSession(queries: QueryClient, onEnded: () => void): () => void {
  return queries.getQueryCache().subscribe((event) => {
    if (event.type !== 'updated' || event.action.type !== 'error') return;
    const { error } = event.action;
    // Who never was signed in is sent to sign in by the route that asked.
    if (!(error instanceof ApiProblem) || error.status !== UNAUTHENTICATED) return;
    if (event.query.state.data !== undefined || event.query.queryKey[0] !== keys.account[0]) onEnded();
  });
}
