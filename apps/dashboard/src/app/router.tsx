import { createRouter, type ErrorComponentProps } from '@tanstack/react-router';
import { ErrorView } from '../shared/ui/error-view.js';
import { Loading } from '../shared/ui/query-view.js';
import { NotFoundPage } from './pages/not-found-page.js';
import { accountRoutes } from './routes/account-routes.js';
import { doorRoutes } from './routes/door-routes.js';
import { planRoutes } from './routes/plan-routes.js';
import { root } from './routes/root.js';
import { teamDataRoutes } from './routes/team-data-routes.js';
import { team, teamHome } from './routes/team-route.js';
import { workRoutes } from './routes/work-routes.js';
import { workshopRoutes } from './routes/workshop-routes.js';

const teamRoutes = team.addChildren([
  teamHome,
  ...accountRoutes,
  ...workRoutes,
  ...workshopRoutes,
  ...planRoutes,
  teamDataRoutes,
]);

function PageError({ error, reset }: ErrorComponentProps) {
  return <ErrorView error={error} onRetry={reset} />;
}

export const router = createRouter({
  routeTree: root.addChildren([...doorRoutes, teamRoutes]),
  defaultPendingComponent: Loading,
  defaultErrorComponent: PageError,
  defaultNotFoundComponent: NotFoundPage,
  scrollRestoration: true,
});

declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router;
  }
  interface StaticDataRouteOption {
    /** The page is made of plain elements, and loads without the kit. */
    readonly withoutKit?: true;
  }
}
