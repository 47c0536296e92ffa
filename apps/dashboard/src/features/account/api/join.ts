import { useMutation, useQueryClient } from '@tanstack/react-query';
import { api, bodyOf } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';

type Person = components['schemas']['SignUpDto'];

/** Joins a team by the single-use token of an invitation, and signs in. */
export function useJoin(token: string) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (person: Person) =>
      bodyOf(api.POST('/api/v1/invitations/accept', { body: { ...person, token } })),
    onSuccess: (account) => queries.setQueryData(keys.account, account),
  });
}
