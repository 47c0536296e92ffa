import { hashKey, type QueryClient, type QueryKey } from '@tanstack/react-query';
import { keys } from '../http/keys.js';
import { ApiProblem } from '../http/problem.js';
import { deviceRecords } from './device-database.js';
import { signedIn } from './signed-in.js';

/** Raised when an answer of the API changes its shape: what an older build has kept is then read again. */
const SHAPE = 2;

const FIRST_SERVER_ERROR = 500;

/** Of a team's readings, those that the rider's pages show. */
const KEPT_LISTS = [
  'bikes',
  'riders',
  'tracks',
  'setups',
  'decisions',
  'runs',
  'baselines',
  'test-plans',
  'planned-sessions',
];

interface KeptRead {
  readonly account: string;
  readonly query: string;
  readonly key: QueryKey;
  readonly data: unknown;
  readonly readAt: number;
  readonly shape: number;
}

const isAccount = (key: QueryKey) => key[0] === keys.account[0];
const isKept = (key: QueryKey) =>
  isAccount(key) || (key[0] === 'team' && KEPT_LISTS.includes(String(key[2])));

/** Keeps what the pages read, for when there is no signal; what another account has left here is removed. */
export function keepReads(queries: QueryClient): void {
  queries.getQueryCache().subscribe((event) => {
    if (event.type !== 'updated') return;
    const { queryKey, state } = event.query;
    // What this person may not see now must not come back without signal either.
    if (
      event.action.type === 'error' &&
      state.error instanceof ApiProblem &&
      state.error.status < FIRST_SERVER_ERROR
    )
      void forget((row) => row.query === hashKey(queryKey));
    if (event.action.type !== 'success') return;
    if (isAccount(queryKey)) enter((state.data as { id: string }).id);
    const account = signedIn.read();
    if (account === null || !isKept(queryKey)) return;
    const row: KeptRead = {
      account,
      query: hashKey(queryKey),
      key: queryKey,
      data: state.data,
      readAt: state.dataUpdatedAt,
      shape: SHAPE,
    };
    // A device that keeps nothing still shows everything while there is signal.
    void deviceRecords.put('reads', row).catch(() => undefined);
  });
}

function enter(account: string): void {
  if (signedIn.read() === account) return;
  signedIn.write(account);
  void forget((row) => row.account !== account);
}

/** Puts what was kept for the account that was here last into `queries`, with the age it has. */
export async function restoreReads(queries: QueryClient): Promise<void> {
  const account = signedIn.read();
  if (account === null) return;
  const rows = await deviceRecords.all<KeptRead>('reads').catch(() => []);
  for (const row of rows) {
    if (row.account === account && row.shape === SHAPE) {
      queries.setQueryData(row.key, row.data, { updatedAt: row.readAt });
    }
  }
  // However young: whether there is signal shows only when something is asked. But no page waits to be told who is here.
  await queries.invalidateQueries({ refetchType: 'none', predicate: ({ queryKey }) => !isAccount(queryKey) });
}

/** Removes everything that was read, as on signing out. Runs that wait to be sent stay. */
export async function forgetReads(): Promise<void> {
  signedIn.forget();
  await forget(() => true);
}

async function forget(isMeant: (row: KeptRead) => boolean): Promise<void> {
  const rows = await deviceRecords.all<KeptRead>('reads').catch(() => []);
  for (const row of rows.filter(isMeant)) await deviceRecords.remove('reads', [row.account, row.query]);
}
