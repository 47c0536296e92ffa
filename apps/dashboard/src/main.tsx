import './app/kit-styles.js';
import './app/base.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app/app.js';

const root = document.getElementById('root');
if (root === null) throw new Error('The page has no element with the id root.');
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
