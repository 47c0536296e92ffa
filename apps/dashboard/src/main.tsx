import './app/base-styles.js';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app/app.js';
import { followColorScheme } from './app/kit/color-scheme.js';
import { queryClient } from './app/query-client.js';
import { keepShell } from './app/start/new-version.js';

const root = document.getElementById('root');
if (root === null) throw new Error('The page has no element with the id root.');
followColorScheme();
keepShell(() => queryClient.isFetching() > 0);
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
