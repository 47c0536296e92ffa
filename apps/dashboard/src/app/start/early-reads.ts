/**
 * The first script of every page, and a small one: it asks for what the rider's page will show while the rest of the
 * script is on its way, which takes a second on a bad line. The pages take its answers in the place of asking.
 */
import type { FetchQueryOptions, UseQueryOptions } from '@tanstack/react-query';
import { accountQuery, type Account } from '../../features/account/api/account.js';
import { bikesQuery, type Bike } from '../../shared/http/reads/bikes.js';
import { lastDecisionQuery } from '../../shared/http/reads/decisions.js';
import { recentRunsQuery } from '../../shared/http/reads/runs.js';
import { currentSetupsQuery } from '../../shared/http/reads/setups.js';
import { tracksQuery } from '../../shared/http/reads/tracks.js';
import { chooseBike } from '../choose-bike.js';
import { homeOf } from '../home.js';

const TEAM_PAGE = /^\/teams\/([^/]+)\/?([^/]*)/;
const MY_BIKE = 'my-bike';

/** Each to be fetched as any other: its first try is answered by what was asked early. That of the account is the first. */
export type EarlyReads = readonly FetchQueryOptions[];

const reads: FetchQueryOptions[] = [];
let areTaken = false;

// What fails here fails again, and is told, where the page asks for it.
void readFor(new URL(location.href)).catch(() => undefined);

/** What has been asked. Nothing more is: from now on the pages ask by themselves. */
export function takeEarlyReads(): EarlyReads {
  areTaken = true;
  return reads;
}

async function readFor({ pathname, searchParams }: URL): Promise<void> {
  const [, teamId, page] = TEAM_PAGE.exec(pathname) ?? [];
  if (teamId === undefined && pathname !== '/') return;
  const account = read(accountQuery);
  if (teamId !== undefined) {
    const named = searchParams.get('bikeId');
    await Promise.all([account, page === MY_BIKE && readMyBike(teamId, account, named)]);
    return;
  }
  const [first] = (await account).memberships;
  if (first !== undefined && homeOf(first).to.endsWith(MY_BIKE))
    await readMyBike(first.teamId, account, null);
}

/** What the figures of a bike wait for: of that in the address, or else of the rider's own. */
async function readMyBike(teamId: string, account: Promise<Account>, named: string | null): Promise<void> {
  if (areTaken) return;
  const bikes = read(bikesQuery(teamId));
  const bike = named ?? ownBike(teamId, account, bikes);
  await Promise.all([bikes, readBike(teamId, bike), read(tracksQuery(teamId))]);
}

async function ownBike(teamId: string, account: Promise<Account>, bikes: Promise<Bike[]>) {
  const { memberships } = await account;
  const riderId = memberships.find((membership) => membership.teamId === teamId)?.riderId ?? null;
  return chooseBike(await bikes, riderId, undefined)?.id;
}

async function readBike(teamId: string, bike: string | Promise<string | undefined>): Promise<void> {
  const bikeId = await bike;
  if (bikeId === undefined || areTaken) return;
  await Promise.all([
    read(currentSetupsQuery(teamId, bikeId)),
    read(lastDecisionQuery(teamId, bikeId)),
    read(recentRunsQuery(teamId, bikeId)),
  ]);
}

function read<Data, Key extends readonly unknown[]>(
  query: UseQueryOptions<Data, Error, Data, Key>,
): Promise<Data> {
  // Our reads use nothing of what the query client, which is not there yet, would hand them.
  const ask = () => (query.queryFn as () => Promise<Data>)();
  const early = ask();
  const answers = [early];
  reads.push({ queryKey: query.queryKey, queryFn: () => answers.pop() ?? ask(), staleTime: 0 });
  return early;
}
