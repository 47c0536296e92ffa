import { useMutation, useQueryClient } from '@tanstack/react-query';
import { api, bodyOf } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';

type Joining = components['schemas']['JoinDto'];

/** Joins a team by the single-use link of an invitation, and signs in. */
export function useJoin() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (joining: Joining) => bodyOf(api.POST('/api/v1/invitations/accept', { body: joining })),
    onSuccess: (account) => queries.setQueryData(keys.account, account),
  });
}
