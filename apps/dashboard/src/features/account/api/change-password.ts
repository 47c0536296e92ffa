import { useMutation, useQueryClient } from '@tanstack/react-query';
import { api, bodyOf } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';

type PasswordChange = components['schemas']['PasswordChangeDto'];

/** Changes the password; every other sign-in of the account ends, its API tokens only where asked. */
export function useChangePassword() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (change: PasswordChange) => bodyOf(api.POST('/api/v1/passwords/change', { body: change })),
    onSuccess: (left) => {
      queries.setQueryData(keys.actingTokens, left);
      return queries.invalidateQueries({ queryKey: keys.signIns });
    },
  });
}
