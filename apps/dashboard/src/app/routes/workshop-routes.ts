import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { textSearch } from './root.js';
import { team } from './team-route.js';

const measureUnit = createRoute({
  getParentRoute: () => team,
  path: 'spring-units/$unitId/measure',
  component: lazyRouteComponent(() => import('../pages/measure-unit-page.js'), 'MeasureUnitPage'),
});

const unitService = createRoute({
  getParentRoute: () => team,
  path: 'spring-units/$unitId/service',
  component: lazyRouteComponent(() => import('../pages/unit-service-page.js'), 'UnitServicePage'),
});

const workOrder = createRoute({
  getParentRoute: () => team,
  path: 'work-orders/$orderId',
  component: lazyRouteComponent(() => import('../pages/work-order-page.js'), 'WorkOrderPage'),
});

/** Which end of which bike lands, in the air of which track; without one, in that of sea level. */
const dropTestPlace = (
  search: Record<string, unknown>,
): { bikeId?: string; end?: 'fork' | 'shock'; trackId?: string | undefined } => ({
  ...textSearch(search, 'bikeId'),
  ...((search['end'] === 'fork' || search['end'] === 'shock') && { end: search['end'] }),
  ...textSearch(search, 'trackId'),
});

const dropTest = createRoute({
  getParentRoute: () => team,
  path: 'drop-test',
  validateSearch: dropTestPlace,
  component: lazyRouteComponent(() => import('../pages/drop-test-page.js'), 'DropTestPage'),
});

/** What is measured on the bench and on a drop, what is serviced, and what is to be done. */
export const workshopRoutes = [measureUnit, dropTest, unitService, workOrder] as const;
