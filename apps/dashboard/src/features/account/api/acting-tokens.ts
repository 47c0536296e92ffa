import { queryOptions } from '@tanstack/react-query';
import { api, bodyOf } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';

export type ActingTokens = components['schemas']['ActingTokensDto'];

/** API tokens that act for the account, by team. */
export const actingTokensQuery = queryOptions({
  queryKey: keys.actingTokens,
  queryFn: () => bodyOf(api.GET('/api/v1/accounts/current/tokens')),
  staleTime: 0,
});
