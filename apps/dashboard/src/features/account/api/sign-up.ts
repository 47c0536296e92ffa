import { useMutation, useQueryClient } from '@tanstack/react-query';
import { api, bodyOf } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';

type Person = components['schemas']['SignUpDto'];

/** Makes an account of one's own, and signs in; a service may allow it by invitation only. */
export function useSignUp() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (person: Person) => bodyOf(api.POST('/api/v1/accounts', { body: person })),
    onSuccess: (account) => queries.setQueryData(keys.account, account),
  });
}
