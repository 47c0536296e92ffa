import { queryOptions } from '@tanstack/react-query';
import { api, bodyOf } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';

export type Comparison = components['schemas']['ComparisonDto'];
export type ArmComparison = components['schemas']['ArmComparisonDto'];
/** A difference with its interval and its verdict, whatever it is of. */
export type IntervalRow = Pick<ArmComparison, 'verdict' | 'differencePct' | 'lowPct' | 'highPct'>;
export type RunPoint = components['schemas']['RunPointDto'];
export type Compared = components['schemas']['ComparedDto'];

/** What the runs of a plan told, as far as it may be looked at now. */
export const planComparisonQuery = (teamId: string, planId: string) =>
  queryOptions({
    queryKey: keys.comparisonOf(teamId, { planId }),
    queryFn: () =>
      bodyOf(
        api.GET('/api/v1/teams/{teamId}/test-plans/{id}/comparison', {
          params: { path: { teamId, id: planId } },
        }),
      ),
  });

interface Chosen {
  readonly bikeId: string;
  readonly trackId: string;
  readonly currentSetupId: string;
  readonly setupId?: string;
}

/** What the runs on set-ups tell that were chosen afterwards. */
export const chosenComparisonQuery = (teamId: string, chosen: Chosen) =>
  queryOptions({
    queryKey: keys.comparisonOf(teamId, chosen),
    queryFn: () =>
      bodyOf(api.GET('/api/v1/teams/{teamId}/comparisons', { params: { path: { teamId }, query: chosen } })),
  });
