import { useMutation, useQueryClient } from '@tanstack/react-query';
import { api, bodyOf } from '../../../shared/http/client.js';
import { keys } from '../../../shared/http/keys.js';

/** Sets a forgotten password by the single-use token of a link, and signs in. */
export function useSetPasswordByLink(token: string) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (newPassword: string) =>
      bodyOf(api.POST('/api/v1/passwords/by-link', { body: { token, newPassword } })),
    onSuccess: (account) => queries.setQueryData(keys.account, account),
  });
}
