import { QueryClient } from '@tanstack/react-query';
import { ApiProblem } from '../shared/http/problem.js';

const STALE_AFTER_MS = 10_000;
const MAX_RETRIES = 2;
const FIRST_SERVER_ERROR = 500;

/** A refusal will be a refusal again; only a lost line or a service in trouble is asked a second time. */
function isWorthRetrying(failures: number, error: Error): boolean {
  if (error instanceof ApiProblem && error.status < FIRST_SERVER_ERROR) return false;
  return failures < MAX_RETRIES;
}

export const queryClient = new QueryClient({
  defaultOptions: {
    queries: {
      staleTime: STALE_AFTER_MS,
      // What was read stays while the app is open: without signal it cannot be read again.
      gcTime: Infinity,
      retry: isWorthRetrying,
      // Whether a device is online nobody can say: a phone in a valley thinks it is. It is always tried.
      networkMode: 'always',
      refetchOnReconnect: true,
    },
    mutations: { networkMode: 'always' },
  },
});
