import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import { api, bodyOf } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';

export type SignIn = components['schemas']['SignInDto'];

/** Where the account is signed in. */
export const signInsQuery = queryOptions({
  queryKey: keys.signIns,
  queryFn: () => bodyOf(api.GET('/api/v1/sign-ins')),
  staleTime: 0,
});

/** Ends one sign-in of the account. */
export function useEndSignIn() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (id: string) => bodyOf(api.DELETE('/api/v1/sign-ins/{id}', { params: { path: { id } } })),
    onSuccess: () => queries.invalidateQueries({ queryKey: keys.signIns }),
  });
}

/** Ends every sign-in of the account, this one too, and forgets everything that was read in it. */
export function useSignOutEverywhere() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: () => bodyOf(api.DELETE('/api/v1/sign-ins')),
    onSuccess: () => queries.clear(),
  });
}
