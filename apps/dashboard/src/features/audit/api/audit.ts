import { infiniteQueryOptions } from '@tanstack/react-query';
import { api, bodyOf } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';

export type AuditEntry = components['schemas']['AuditEntryDto'];

export interface AuditFilter {
  readonly kind?: AuditEntry['kind'];
  readonly accountId?: string;
}

/** Who changed what, newest first, page after page. */
export const auditQuery = (teamId: string, filter: AuditFilter) =>
  infiniteQueryOptions({
    queryKey: keys.audit(teamId, filter),
    queryFn: ({ pageParam: cursor }) =>
      bodyOf(
        api.GET('/api/v1/teams/{teamId}/audit', {
          params: { path: { teamId }, query: { ...filter, ...(cursor !== '' && { cursor }) } },
        }),
      ),
    initialPageParam: '',
    getNextPageParam: ({ nextCursor }) => nextCursor,
    // Every write of the team adds to it.
    staleTime: 0,
  });
