import { useMutation, useQueryClient } from '@tanstack/react-query';
import { api, bodyOf } from '../../../shared/http/client.js';
import { keys } from '../../../shared/http/keys.js';

/** Takes a person out of the team; what they entered stays. */
export function useRemoveMember(teamId: string) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (id: string) =>
      bodyOf(api.DELETE('/api/v1/teams/{teamId}/members/{id}', { params: { path: { teamId, id } } })),
    onSuccess: () => queries.invalidateQueries({ queryKey: keys.members(teamId) }),
  });
}
