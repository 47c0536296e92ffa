import { queryOptions } from '@tanstack/react-query';
import { api, bodyOf } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';

export type Account = components['schemas']['AccountDto'];
export type Membership = Account['memberships'][number];

/** Who is signed in, and in which teams. */
export const accountQuery = queryOptions({
  queryKey: keys.account,
  queryFn: () => bodyOf(api.GET('/api/v1/accounts/current')),
  staleTime: Infinity,
});
