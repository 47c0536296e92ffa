import { createRoute, lazyRouteComponent, redirect } from '@tanstack/react-router';
import { team } from './team-route.js';

const teamData = createRoute({
  getParentRoute: () => team,
  path: 'team',
  component: lazyRouteComponent(() => import('../pages/team-data-page.js'), 'TeamDataPage'),
});

const start = createRoute({
  getParentRoute: () => teamData,
  path: '/',
  beforeLoad: ({ params }) => {
    throw redirect({ to: '/teams/$teamId/team/spring-units', params, replace: true });
  },
});

const springUnits = createRoute({
  getParentRoute: () => teamData,
  path: 'spring-units',
  component: lazyRouteComponent(() => import('../pages/team-units-page.js'), 'TeamUnitsPage'),
});

const springUnit = createRoute({
  getParentRoute: () => teamData,
  path: 'spring-units/$unitId',
  component: lazyRouteComponent(() => import('../pages/team-unit-page.js'), 'TeamUnitPage'),
});

const spacers = createRoute({
  getParentRoute: () => teamData,
  path: 'spacers',
  component: lazyRouteComponent(() => import('../pages/team-spacers-page.js'), 'TeamSpacersPage'),
});

const riders = createRoute({
  getParentRoute: () => teamData,
  path: 'riders',
  component: lazyRouteComponent(() => import('../pages/team-riders-page.js'), 'TeamRidersPage'),
});

const rider = createRoute({
  getParentRoute: () => teamData,
  path: 'riders/$riderId',
  component: lazyRouteComponent(() => import('../pages/team-rider-page.js'), 'TeamRiderPage'),
});

const bikes = createRoute({
  getParentRoute: () => teamData,
  path: 'bikes',
  component: lazyRouteComponent(() => import('../pages/team-bikes-page.js'), 'TeamBikesPage'),
});

const bike = createRoute({
  getParentRoute: () => teamData,
  path: 'bikes/$bikeId',
  component: lazyRouteComponent(() => import('../pages/team-bike-page.js'), 'TeamBikePage'),
});

const members = createRoute({
  getParentRoute: () => teamData,
  path: 'members',
  component: lazyRouteComponent(() => import('../pages/team-members-page.js'), 'TeamMembersPage'),
});

const tokens = createRoute({
  getParentRoute: () => teamData,
  path: 'tokens',
  component: lazyRouteComponent(() => import('../pages/team-tokens-page.js'), 'TeamTokensPage'),
});

const audit = createRoute({
  getParentRoute: () => teamData,
  path: 'audit',
  component: lazyRouteComponent(() => import('../pages/audit-page.js'), 'AuditPage'),
});

const archive = createRoute({
  getParentRoute: () => teamData,
  path: 'archive',
  component: lazyRouteComponent(() => import('../pages/team-archive-page.js'), 'TeamArchivePage'),
});

const records = [springUnits, springUnit, spacers, riders, rider, bikes, bike] as const;
const access = [members, tokens, audit, archive] as const;

/** What a team enters once and keeps right: units, riders, bikes, members; and who may do and did what. */
export const teamDataRoutes = teamData.addChildren([start, ...records, ...access]);
