import type { FetchQueryOptions } from '@tanstack/react-query';
import { accountQuery, type Account } from '../features/account/api/account.js';
import { keepReads, restoreReads } from '../shared/device/kept-reads.js';
import { queryClient } from './query-client.js';
import { takeEarlyReads, type EarlyReads } from './start/early-reads.js';

/** What this device has kept: pages show it at once, with its age, and read it again where there is signal. */
export const reads = { restored: restore() };

async function restore(): Promise<void> {
  await restoreReads(queryClient);
  keepReads(queryClient);
  const kept = queryClient.getQueryData(accountQuery.queryKey);
  takeOver(takeEarlyReads());
  if (kept !== undefined) void confirmAccount(kept);
}

/** Goes on with what was asked before the pages were there; of nobody who turns out not to be signed in. */
function takeOver([account, ...others]: EarlyReads): void {
  const read = (query: FetchQueryOptions) => void queryClient.prefetchQuery(query);
  if (account !== undefined)
    queryClient.fetchQuery(account).then(
      () => others.forEach(read),
      () => undefined,
    );
}

/** Asks whether the session that was kept is still there, since the pages begin without asking. */
async function confirmAccount(kept: Account): Promise<void> {
  const account = await queryClient.fetchQuery({ ...accountQuery, staleTime: 0 }).catch(() => undefined);
  // Somebody else has signed in on this device meanwhile, of whom nothing may stay on the page; or other units were
  // chosen on another device, in which every figure has to be drawn again.
  const isOther =
    account !== undefined && (account.id !== kept.id || account.units.version !== kept.units.version);
  if (isOther) window.location.reload();
}
