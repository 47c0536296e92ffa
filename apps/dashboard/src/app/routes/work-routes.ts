import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { textSearch } from './root.js';
import { team } from './team-route.js';

const pit = createRoute({
  getParentRoute: () => team,
  path: 'pit',
  validateSearch: (search): { trackId?: string } => textSearch(search, 'trackId'),
  component: lazyRouteComponent(() => import('../pages/pit-page.js'), 'PitPage'),
});

const firstSteps = createRoute({
  getParentRoute: () => team,
  path: 'first-steps',
  component: lazyRouteComponent(() => import('../pages/first-steps-page.js'), 'FirstStepsPage'),
});

const bike = createRoute({
  getParentRoute: () => team,
  path: 'bikes/$bikeId',
  component: lazyRouteComponent(() => import('../pages/bike-page.js'), 'BikePage'),
});

/** Which end of the bike is on the bench, on which track. */
const benchPlace = (search: Record<string, unknown>): { end?: 'fork' | 'shock'; trackId?: string } => ({
  ...((search['end'] === 'fork' || search['end'] === 'shock') && { end: search['end'] }),
  ...textSearch(search, 'trackId'),
});

const workbench = createRoute({
  getParentRoute: () => team,
  path: 'bikes/$bikeId/workbench',
  validateSearch: benchPlace,
  component: lazyRouteComponent(() => import('../pages/workbench-page.js'), 'WorkbenchPage'),
});

/** What a set-up starts from: one that was ridden before, what a plan told of it, and on which track. */
const setupOrigin = (
  search: Record<string, unknown>,
): { setupId?: string; testPlanId?: string; trackId?: string } => ({
  ...textSearch(search, 'setupId'),
  ...textSearch(search, 'testPlanId'),
  ...textSearch(search, 'trackId'),
});

const newSetup = createRoute({
  getParentRoute: () => team,
  path: 'bikes/$bikeId/new-set-up',
  validateSearch: setupOrigin,
  component: lazyRouteComponent(() => import('../pages/new-setup-page.js'), 'NewSetupPage'),
});

const tracks = createRoute({
  getParentRoute: () => team,
  path: 'tracks',
  component: lazyRouteComponent(() => import('../pages/tracks-page.js'), 'TracksPage'),
});

const track = createRoute({
  getParentRoute: () => team,
  path: 'tracks/$trackId',
  validateSearch: (search): { ground?: string } => textSearch(search, 'ground'),
  component: lazyRouteComponent(() => import('../pages/track-page.js'), 'TrackPage'),
});

const editTrack = createRoute({
  getParentRoute: () => team,
  path: 'tracks/$trackId/change',
  component: lazyRouteComponent(() => import('../pages/edit-track-page.js'), 'EditTrackPage'),
});

/** Whose decisions are shown. */
const whose = (search: Record<string, unknown>): { bikeId?: string; riderId?: string; trackId?: string } => ({
  ...textSearch(search, 'bikeId'),
  ...textSearch(search, 'riderId'),
  ...textSearch(search, 'trackId'),
});

const decisions = createRoute({
  getParentRoute: () => team,
  path: 'decisions',
  validateSearch: whose,
  component: lazyRouteComponent(() => import('../pages/decisions-page.js'), 'DecisionsPage'),
});

const importRuns = createRoute({
  getParentRoute: () => team,
  path: 'import-runs',
  component: lazyRouteComponent(() => import('../pages/import-runs-page.js'), 'ImportRunsPage'),
});

/** Which bike and track the rider is looking at; without them, their first bike and their last track. */
const place = (search: Record<string, unknown>): { bikeId?: string; trackId?: string } => ({
  ...textSearch(search, 'bikeId'),
  ...textSearch(search, 'trackId'),
});

const myBike = createRoute({
  getParentRoute: () => team,
  path: 'my-bike',
  validateSearch: place,
  // The first page of somebody on a bad line.
  staticData: { withoutKit: true },
  component: lazyRouteComponent(() => import('../pages/my-bike-page.js'), 'MyBikePage'),
});

const logRun = createRoute({
  getParentRoute: () => team,
  path: 'my-bike/log-run',
  validateSearch: (search): { bikeId?: string; trackId?: string; correct?: string } => ({
    ...place(search),
    ...textSearch(search, 'correct'),
  }),
  component: lazyRouteComponent(() => import('../pages/log-run-page.js'), 'LogRunPage'),
});

/** The first pages of the three people, and where they lead. */
export const workRoutes = [
  pit,
  firstSteps,
  bike,
  workbench,
  newSetup,
  tracks,
  track,
  editTrack,
  decisions,
  importRuns,
  myBike,
  logRun,
] as const;
