import { queryOptions } from '@tanstack/react-query';
import { localDay } from '../../format/time.js';
import { allPages } from '../all-pages.js';
import { api, bodyOf } from '../client.js';
import type { components } from '../generated/schema.js';
import { keys } from '../keys.js';

export type PlannedSession = components['schemas']['PlannedSessionDto'];

interface Filter {
  readonly trackId?: string;
  readonly fromDay: string;
  readonly toDay?: string;
}

/** In the order in which they start. */
const read = async (teamId: string, filter: Filter) => {
  const sessions = await allPages((page) =>
    bodyOf(
      api.GET('/api/v1/teams/{teamId}/planned-sessions', {
        params: { path: { teamId }, query: { ...filter, ...page } },
      }),
    ),
  );
  return sessions.toSorted((a, b) => startOf(a).localeCompare(startOf(b)));
};

/** When a session starts, by the clock at the track, as a date is written: 2026-05-09T09:30. */
export const startOf = ({ day, startsAt }: PlannedSession) => `${day}T${startsAt}`;

/** The sessions planned on a track in these days. */
export const plannedSessionsQuery = (teamId: string, place: Required<Filter>) =>
  queryOptions({
    queryKey: [...keys.plannedSessions(teamId), place],
    queryFn: () => read(teamId, place),
  });

/**
 * The sessions planned from the day of asking on, on every track; a rider sees their own. The key names no day: what a
 * phone has kept is found on it the next day too.
 */
export const comingSessionsQuery = (teamId: string) =>
  queryOptions({
    queryKey: [...keys.plannedSessions(teamId), 'coming'],
    queryFn: () => read(teamId, { fromDay: localDay(new Date()) }),
  });
