import { redirect } from '@tanstack/react-router';
import { accountQuery } from '../../features/account/api/account.js';
import { ApiProblem, NoConnection } from '../../shared/http/problem.js';
import { queryClient } from '../query-client.js';
import { reads } from '../reads.js';

const UNAUTHENTICATED = 401;

/** The signed-in account; sends everybody else to the sign-in page, and back here afterwards. */
export async function requireAccount(from: string) {
  await reads.restored;
  try {
    // Read again where something has changed it: a team that was just made is in no account kept from before.
    return await queryClient.fetchQuery(accountQuery);
  } catch (error) {
    const kept = queryClient.getQueryData(accountQuery.queryKey);
    if (error instanceof NoConnection && kept !== undefined) return kept;
    if (error instanceof ApiProblem && error.status === UNAUTHENTICATED) {
      throw redirect({ to: '/sign-in', search: from === '/' ? {} : { to: from }, replace: true });
    }
    throw error;
  }
}
