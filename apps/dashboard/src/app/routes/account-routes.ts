import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { team } from './team-route.js';

const signIns = createRoute({
  getParentRoute: () => team,
  path: 'sign-ins',
  component: lazyRouteComponent(() => import('../pages/sign-ins-page.js'), 'SignInsPage'),
});

/** What belongs to the person, whatever the team. */
export const accountRoutes = [signIns] as const;
