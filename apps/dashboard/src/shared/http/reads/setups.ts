import { queryOptions } from '@tanstack/react-query';
import { api, bodyOf } from '../client.js';
import type { components } from '../generated/schema.js';
import { keys } from '../keys.js';

export type Setup = components['schemas']['SetupDto'];
export type EndSetup = components['schemas']['EndSetupDto'];

const list = (teamId: string, bikeId: string, limit: number) =>
  bodyOf(
    api.GET('/api/v1/teams/{teamId}/setups', { params: { path: { teamId }, query: { bikeId, limit } } }),
  ).then(({ items }) => items);

/** What is in a bike now and what was before: its last two set-ups, newest first; empty before the first. */
export const currentSetupsQuery = (teamId: string, bikeId: string) =>
  queryOptions({
    queryKey: keys.currentSetups(teamId, bikeId),
    queryFn: () => list(teamId, bikeId, 2),
  });

const HISTORY_LENGTH = 100;

/** The set-ups of a bike, newest first. */
export const setupHistoryQuery = (teamId: string, bikeId: string) =>
  queryOptions({
    queryKey: keys.setupHistory(teamId, bikeId),
    queryFn: () => list(teamId, bikeId, HISTORY_LENGTH),
  });
