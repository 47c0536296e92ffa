import { queryOptions } from '@tanstack/react-query';
import { byName } from '../../format/by-name.js';
import { allPages } from '../all-pages.js';
import { api, bodyOf } from '../client.js';
import type { components } from '../generated/schema.js';
import { keys } from '../keys.js';

export type SpringUnit = components['schemas']['SpringUnitDto'];

/** The forks and shocks of a team. */
export const springUnitsQuery = (teamId: string) =>
  queryOptions({
    queryKey: keys.springUnits(teamId),
    queryFn: () =>
      allPages((query) =>
        bodyOf(api.GET('/api/v1/teams/{teamId}/spring-units', { params: { path: { teamId }, query } })),
      ).then(byName),
  });

/** Without all its limits a unit gets curves, but no recommendation. */
export const hasLimits = (unit: SpringUnit) =>
  unit.minPressurePsi !== null && unit.maxPressurePsi !== null && unit.maxSpacers !== null;
