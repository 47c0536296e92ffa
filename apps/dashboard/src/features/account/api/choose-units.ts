import { useMutation, useQueryClient } from '@tanstack/react-query';
import { api, bodyOf, ifMatch } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { accountQuery } from './account.js';

export type ChosenUnits = components['schemas']['UnitsInputDto'];

/** Chooses the units in which this account reads. */
export function useChooseUnits(version: number) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: (body: ChosenUnits) =>
      bodyOf(api.PUT('/api/v1/accounts/current/units', { params: { header: ifMatch(version) }, body })),
    onSuccess: (units) =>
      queries.setQueryData(accountQuery.queryKey, (account) => account && { ...account, units }),
    // Chosen meanwhile on another device: the next press changes that.
    onError: () => queries.invalidateQueries({ queryKey: accountQuery.queryKey }),
  });
}
