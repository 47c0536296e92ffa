import type { RealIds } from './garbage.js';
import type { SignedIn } from './demo-sign-in.js';

interface Stored {
  readonly id: string;
  readonly [name: string]: unknown;
}

const LISTS = [
  ...['riders', 'spring-units', 'tracks', 'sessions', 'setups', 'decisions', 'runs', 'test-plans', 'members'],
  ...['tokens', 'planned-sessions', 'spacer-movements', 'work-orders'],
];

/** Ids of the demo team by the names that paths and fields give them; the first of each are of one bike on one track. */
export async function idsOfDemo(address: string, { cookie, teamId }: SignedIn): Promise<RealIds> {
  const list = async (path: string): Promise<Stored[]> => {
    const answer = await fetch(`${address}/api/v1/teams/${teamId}/${path}`, { headers: { cookie } });
    const body = (await answer.json()) as Stored[] | { items: Stored[] };
    return Array.isArray(body) ? body : body.items;
  };
  const [run] = await list('runs');
  if (!run) throw new Error('The demo team has no run.');
  const bikes = await list('bikes');
  const bike = bikes.find(({ id }) => id === run['bikeId']) ?? run;
  const things = new Map<string, string[]>();
  for (const name of LISTS)
    things.set(
      name,
      (await list(name)).map(({ id }) => id),
    );
  const first = (name: string, wanted: unknown, from = things.get(name) ?? []): string[] => {
    return typeof wanted === 'string' ? [wanted, ...from.filter((id) => id !== wanted)] : from;
  };
  const [setup] = await list(`setups?bikeId=${bike.id}`);
  const [baseline] = await list(`baselines?trackId=${String(run['trackId'])}&bikeId=${bike.id}`);
  const [order] = await list('work-orders');
  const [movement] = await list(`spring-units/${String(bike['forkUnitId'])}/service-entries`);
  const bikeIds = first(
    'bikes',
    bike.id,
    bikes.map(({ id }) => id),
  );
  const setups = first('setups', setup?.id);
  const sessions = first('sessions', run['sessionId']);
  const riders = first('riders', run['riderId']);
  const tracks = first('tracks', run['trackId']);
  const units = first('spring-units', bike['forkUnitId']);
  const plans = things.get('test-plans') ?? [];
  const members = await list('members');
  return new Map<string, readonly string[]>([
    ...things,
    ['teamId', [teamId]],
    ...['bikes', 'bikeId'].map((name) => [name, bikeIds] as const),
    ...['setups', 'setupId', 'currentSetupId'].map((name) => [name, setups] as const),
    ...['sessions', 'sessionId'].map((name) => [name, sessions] as const),
    ...['riders', 'riderId', 'riderIds'].map((name) => [name, riders] as const),
    ...['tracks', 'trackId'].map((name) => [name, tracks] as const),
    ...['spring-units', 'forkUnitId'].map((name) => [name, units] as const),
    ['shockUnitId', first('spring-units', bike['shockUnitId'])],
    ['testPlanId', plans],
    ['runId', first('runs', run.id)],
    ['baselines', baseline ? [baseline.id] : []],
    ['baselineId', baseline ? [baseline.id] : []],
    ['accountId', members.map((member) => String(member['accountId']))],
    // Whoever sends the garbage stays in the team, and so does who could let them in again.
    ['members', members.filter(({ role }) => role === 'rider').map(({ id }) => id)],
    ['service-entries', movement ? [movement.id] : []],
    ['work-steps', ((order?.['steps'] ?? []) as Stored[]).map(({ id }) => id)],
  ]);
}
