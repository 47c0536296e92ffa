import { useMutation, useQueryClient } from '@tanstack/react-query';
import { api, bodyOf } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';

type Credentials = components['schemas']['CredentialsDto'];

export function useSignIn() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (credentials: Credentials) => bodyOf(api.POST('/api/v1/sign-ins', { body: credentials })),
    onSuccess: (account) => queries.setQueryData(keys.account, account),
  });
}
