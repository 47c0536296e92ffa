import { QueryClientProvider } from '@tanstack/react-query';
import { RouterProvider } from '@tanstack/react-router';
import { useEffect } from 'react';
import { forgetReads } from '../shared/device/kept-reads.js';
import { queryClient } from './query-client.js';
import { router } from './router.js';
import { watchSession } from './watch-session.js';

/** The session is gone: so is what was read in it. The route asks who is signed in, and leads to the sign-in page. */
async function leave(): Promise<void> {
  await forgetReads();
  queryClient.clear();
  await router.invalidate();
}

export function App() {
  useEffect(() => watchSession(queryClient, () => void leave()), []);
  return (
    <QueryClientProvider client={queryClient}>
      <RouterProvider router={router} />
    </QueryClientProvider>
  );
}
