import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { team } from './team-route.js';

const signIns = createRoute({
  getParentRoute: () => team,
  path: 'sign-ins',
  component: lazyRouteComponent(() => import('../pages/sign-ins-page.js'), 'SignInsPage'),
});

const units = createRoute({
  getParentRoute: () => team,
  path: 'units',
  component: lazyRouteComponent(() => import('../pages/units-page.js'), 'UnitsPage'),
});

/** What belongs to the person, whatever the team. */
export const accountRoutes = [signIns, units] as const;
