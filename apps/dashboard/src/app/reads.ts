import { accountQuery } from '../features/account/api/account.js';
import { keepReads, restoreReads } from '../shared/device/kept-reads.js';
import { queryClient } from './query-client.js';

/** What this device has kept: pages show it at once, with its age, and read it again where there is signal. */
export const reads = {
  restored: restoreReads(queryClient).then(() => keepReads(queryClient)),
};

/** Asks once whether the session that was kept is still there, since the pages have begun without asking. */
export async function confirmAccount(): Promise<void> {
  await reads.restored;
  const kept = queryClient.getQueryData(accountQuery.queryKey);
  if (kept === undefined) return;
  const account = await queryClient.fetchQuery({ ...accountQuery, staleTime: 0 }).catch(() => undefined);
  // Somebody else has signed in on this device meanwhile, of whom nothing may stay on the page; or other units were
  // chosen on another device, in which every figure has to be drawn again.
  const isOther =
    account !== undefined && (account.id !== kept.id || account.units.version !== kept.units.version);
  if (isOther) window.location.reload();
}
