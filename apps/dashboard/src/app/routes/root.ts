import { createRootRoute, Outlet } from '@tanstack/react-router';
import { NotFoundPage } from '../pages/not-found-page.js';

export const root = createRootRoute({ component: Outlet, notFoundComponent: NotFoundPage });

/** A search parameter if it is text; anything else in the address is ignored. */
export const textSearch = (search: Record<string, unknown>, name: string) =>
  typeof search[name] === 'string' ? { [name]: search[name] } : {};
