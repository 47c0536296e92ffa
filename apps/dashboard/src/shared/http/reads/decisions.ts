import { queryOptions } from '@tanstack/react-query';
import { api, bodyOf } from '../client.js';
import type { components } from '../generated/schema.js';
import { keys } from '../keys.js';

export type Decision = components['schemas']['DecisionDto'];

const list = (teamId: string, bikeId: string, limit: number) =>
  bodyOf(
    api.GET('/api/v1/teams/{teamId}/decisions', { params: { path: { teamId }, query: { bikeId, limit } } }),
  ).then(({ items }) => items);

/** The last decision about a bike, in a list of one; empty before the first. */
export const lastDecisionQuery = (teamId: string, bikeId: string) =>
  queryOptions({
    queryKey: keys.lastDecision(teamId, bikeId),
    queryFn: () => list(teamId, bikeId, 1),
  });

const HISTORY_LENGTH = 100;

/** The decisions about a bike, newest first. */
export const decisionHistoryQuery = (teamId: string, bikeId: string) =>
  queryOptions({
    queryKey: keys.decisionHistory(teamId, bikeId),
    queryFn: () => list(teamId, bikeId, HISTORY_LENGTH),
  });
