import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import { api, bodyOf } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';

export type Token = components['schemas']['ApiTokenDto'];
type TokenInput = components['schemas']['ApiTokenInputDto'];
export type TokenScope = Token['scopes'][number];

/** The tokens of the team that are in force. */
export const tokensQuery = (teamId: string) =>
  queryOptions({
    queryKey: keys.tokens(teamId),
    queryFn: () => bodyOf(api.GET('/api/v1/teams/{teamId}/tokens', { params: { path: { teamId } } })),
  });

/** Makes a token; its answer is the only one that shows it. */
export function useMakeToken(teamId: string) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (body: TokenInput) =>
      bodyOf(api.POST('/api/v1/teams/{teamId}/tokens', { params: { path: { teamId } }, body })),
    onSuccess: () => queries.invalidateQueries({ queryKey: keys.tokens(teamId) }),
  });
}

export function useRevokeToken(teamId: string) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (id: string) =>
      bodyOf(api.DELETE('/api/v1/teams/{teamId}/tokens/{id}', { params: { path: { teamId, id } } })),
    onSuccess: () => queries.invalidateQueries({ queryKey: keys.tokens(teamId) }),
  });
}
