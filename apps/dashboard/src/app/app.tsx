import { MantineProvider } from '@mantine/core';
import { QueryClientProvider } from '@tanstack/react-query';
import { RouterProvider } from '@tanstack/react-router';
import { useEffect } from 'react';
import { queryClient } from './query-client.js';
import { router } from './router.js';
import { cssVariables, theme } from './theme.js';
import { watchSession } from './watch-session.js';

export function App() {
  // The route asks who is signed in, and sends who is not to the sign-in page.
  useEffect(() => watchSession(queryClient, () => void router.invalidate()), []);
  return (
    <MantineProvider theme={theme} cssVariablesResolver={cssVariables} defaultColorScheme="auto">
      <QueryClientProvider client={queryClient}>
        <RouterProvider router={router} />
      </QueryClientProvider>
    </MantineProvider>
  );
}
