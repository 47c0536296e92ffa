/**
 * The only place where query keys are made. They nest: what is under a team is refreshed with it, and a written
 * thing names the lists it changes.
 */
const team = (teamId: string) => ['team', teamId] as const;

export const keys = {
  account: ['account'] as const,
  signIns: ['sign-ins'] as const,
  actingTokens: ['acting-tokens'] as const,
  team,
  tokens: (teamId: string) => [...team(teamId), 'tokens'] as const,
  audit: (teamId: string, filter: object) => [...team(teamId), 'audit', filter] as const,
  members: (teamId: string) => [...team(teamId), 'members'] as const,
  riders: (teamId: string) => [...team(teamId), 'riders'] as const,
  bikes: (teamId: string) => [...team(teamId), 'bikes'] as const,
  springUnits: (teamId: string) => [...team(teamId), 'spring-units'] as const,
  tracks: (teamId: string) => [...team(teamId), 'tracks'] as const,
  plannedSessions: (teamId: string) => [...team(teamId), 'planned-sessions'] as const,
  setups: (teamId: string) => [...team(teamId), 'setups'] as const,
  currentSetups: (teamId: string, bikeId: string) => [...team(teamId), 'setups', bikeId, 'current'] as const,
  setupHistory: (teamId: string, bikeId: string) => [...team(teamId), 'setups', bikeId, 'history'] as const,
  decisions: (teamId: string) => [...team(teamId), 'decisions'] as const,
  lastDecision: (teamId: string, bikeId: string) => [...team(teamId), 'decisions', bikeId, 'last'] as const,
  decisionHistory: (teamId: string, bikeId: string) =>
    [...team(teamId), 'decisions', bikeId, 'history'] as const,
  decisionsOf: (teamId: string, filter: object) => [...team(teamId), 'decisions', filter] as const,
  sessions: (teamId: string) => [...team(teamId), 'sessions'] as const,
  runs: (teamId: string) => [...team(teamId), 'runs'] as const,
  runsOf: (teamId: string, filter: object) => [...team(teamId), 'runs', filter] as const,
  recentRuns: (teamId: string, bikeId: string) => [...team(teamId), 'runs', bikeId, 'recent'] as const,
  pit: (teamId: string) => [...team(teamId), 'pit'] as const,
  pitIn: (teamId: string, air: object) => [...team(teamId), 'pit', air] as const,
  unitServices: (teamId: string) => [...team(teamId), 'unit-service'] as const,
  unitService: (teamId: string, unitId: string) => [...team(teamId), 'unit-service', unitId] as const,
  spacers: (teamId: string) => [...team(teamId), 'spacers'] as const,
  workOrders: (teamId: string) => [...team(teamId), 'work-orders'] as const,
  testPlans: (teamId: string) => [...team(teamId), 'test-plans'] as const,
  testPlansIn: (teamId: string, filter: object) => [...team(teamId), 'test-plans', 'list', filter] as const,
  planPreview: (teamId: string, size: object) => [...team(teamId), 'test-plans', 'preview', size] as const,
  testPlan: (teamId: string, planId: string) => [...team(teamId), 'test-plans', planId, 'plan'] as const,
  planProgress: (teamId: string, planId: string) =>
    [...team(teamId), 'test-plans', planId, 'progress'] as const,
  comparisons: (teamId: string) => [...team(teamId), 'comparisons'] as const,
  comparisonOf: (teamId: string, of: object) => [...team(teamId), 'comparisons', of] as const,
  baselines: (teamId: string) => [...team(teamId), 'baselines'] as const,
  baselinesOn: (teamId: string, place: object) => [...team(teamId), 'baselines', place] as const,
  demand: (teamId: string) => [...team(teamId), 'demand'] as const,
  demandOn: (teamId: string, trackId: string, asked: object) =>
    [...team(teamId), 'demand', trackId, asked] as const,
};

/** What a new set-up of a bike changes on the pages. */
export const changedBySetup = (teamId: string) => [
  keys.setups(teamId),
  keys.decisions(teamId),
  keys.baselines(teamId),
  keys.workOrders(teamId),
  keys.pit(teamId),
];

/** What a run more, or one that counts no more, changes on the pages. */
export const changedByRun = (teamId: string) => [
  keys.runs(teamId),
  keys.sessions(teamId),
  keys.demand(teamId),
  keys.baselines(teamId),
  keys.testPlans(teamId),
  keys.comparisons(teamId),
  keys.pit(teamId),
  keys.unitServices(teamId),
];
