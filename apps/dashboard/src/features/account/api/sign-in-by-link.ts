import { useMutation, useQueryClient } from '@tanstack/react-query';
import { api, bodyOf } from '../../../shared/http/client.js';
import { keys } from '../../../shared/http/keys.js';

/** Signs in by the single-use token of a link from the pit. */
export function useSignInByLink() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (token: string) => bodyOf(api.POST('/api/v1/sign-ins/by-link', { body: { token } })),
    onSuccess: (account) => queries.setQueryData(keys.account, account),
  });
}
