import { queryOptions } from '@tanstack/react-query';
import { api, bodyOf } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';

export type Member = components['schemas']['MemberDto'];

/** Who belongs to the team. */
export const membersQuery = (teamId: string) =>
  queryOptions({
    queryKey: keys.members(teamId),
    queryFn: () => bodyOf(api.GET('/api/v1/teams/{teamId}/members', { params: { path: { teamId } } })),
  });
