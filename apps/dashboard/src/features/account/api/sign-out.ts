import { useMutation, useQueryClient } from '@tanstack/react-query';
import { forgetReads } from '../../../shared/device/kept-reads.js';
import { api, bodyOf } from '../../../shared/http/client.js';

/** Ends the session and forgets everything that was read in it, on this device too. */
export function useSignOut() {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: () => bodyOf(api.DELETE('/api/v1/sign-ins/current')),
    onSuccess: async () => {
      queries.clear();
      await forgetReads();
    },
  });
}
