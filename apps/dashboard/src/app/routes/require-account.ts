import { redirect } from '@tanstack/react-router';
import { accountQuery } from '../../features/account/api/account.js';
import { ApiProblem } from '../../shared/http/problem.js';
import { queryClient } from '../query-client.js';
import { reads } from '../reads.js';

const UNAUTHENTICATED = 401;

/** The signed-in account; sends everybody else to the sign-in page, and back here afterwards. */
export async function requireAccount(from: string) {
  await reads.restored;
  try {
    return await queryClient.ensureQueryData(accountQuery);
  } catch (error) {
    if (error instanceof ApiProblem && error.status === UNAUTHENTICATED) {
      throw redirect({ to: '/sign-in', search: from === '/' ? {} : { to: from }, replace: true });
    }
    throw error;
  }
}
