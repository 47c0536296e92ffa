import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { textSearch } from './root.js';
import { team } from './team-route.js';

const plans = createRoute({
  getParentRoute: () => team,
  path: 'test-plans',
  validateSearch: (search): { trackId?: string } => textSearch(search, 'trackId'),
  component: lazyRouteComponent(() => import('../pages/plans-page.js'), 'PlansPage'),
});

const newPlan = createRoute({
  getParentRoute: () => team,
  path: 'test-plans/new',
  validateSearch: (search): { trackId?: string; bikeId?: string } => ({
    ...textSearch(search, 'trackId'),
    ...textSearch(search, 'bikeId'),
  }),
  component: lazyRouteComponent(() => import('../pages/new-plan-page.js'), 'NewPlanPage'),
});

const plan = createRoute({
  getParentRoute: () => team,
  path: 'test-plans/$planId',
  validateSearch: (search): { riderId?: string | undefined } => textSearch(search, 'riderId'),
  component: lazyRouteComponent(() => import('../pages/plan-page.js'), 'PlanPage'),
});

const planComparison = createRoute({
  getParentRoute: () => team,
  path: 'test-plans/$planId/comparison',
  component: lazyRouteComponent(() => import('../pages/plan-comparison-page.js'), 'PlanComparisonPage'),
});

/** Which set-ups of which bike are compared, ridden on which track. */
const chosenSetups = (
  search: Record<string, unknown>,
): { bikeId?: string; trackId?: string; currentSetupId?: string; setupId?: string } => ({
  ...textSearch(search, 'bikeId'),
  ...textSearch(search, 'trackId'),
  ...textSearch(search, 'currentSetupId'),
  ...textSearch(search, 'setupId'),
});

const comparison = createRoute({
  getParentRoute: () => team,
  path: 'comparison',
  validateSearch: chosenSetups,
  component: lazyRouteComponent(() => import('../pages/comparison-page.js'), 'ComparisonPage'),
});

/** Where and when the weekend is; the page reads what makes sense of it. */
const anySearch = (search: Record<string, unknown>) => search;

const weekend = createRoute({
  getParentRoute: () => team,
  path: 'weekend',
  validateSearch: anySearch,
  component: lazyRouteComponent(() => import('../pages/weekend-page.js'), 'WeekendPage'),
});

const weekendSheets = createRoute({
  getParentRoute: () => team,
  path: 'weekend/sheets',
  validateSearch: anySearch,
  component: lazyRouteComponent(() => import('../pages/weekend-sheets-page.js'), 'WeekendSheetsPage'),
});

/** The coach's: test plans, what they told, and the weekend. */
export const planRoutes = [plans, newPlan, plan, planComparison, comparison, weekend, weekendSheets] as const;
