import { useMutation, useQueryClient } from '@tanstack/react-query';
import { api, bodyOf } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';

type NewPassword = components['schemas']['NewPasswordDto'];

/** Sets a forgotten password by the single-use token of a link, and signs in. */
export function useSetPasswordByLink(token: string) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (wanted: Omit<NewPassword, 'token'>) =>
      bodyOf(api.POST('/api/v1/passwords/by-link', { body: { token, ...wanted } })),
    onSuccess: (account) => queries.setQueryData(keys.account, account),
  });
}
