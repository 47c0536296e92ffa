import { type ChildProcess, execFile, spawn } from 'node:child_process';
import { once } from 'node:events';
import { promisify } from 'node:util';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startThrowaway } from '../../apps/api/scripts/postgres/embedded.mjs';
import { anyFreePort } from '../../apps/api/scripts/process/ports.mjs';
import { exampleOf, ID_OF_NOBODY, readDocument, type Route, routesOf } from '../api/support/open-api.js';
import { createDatabase, nameOf } from '../support/sql.js';
import { type SignedIn, signInToDemo } from './demo-sign-in.js';
import { garbageFor } from './garbage.js';
import { clone, isReady, waitUntil } from './house.js';
import { migrate, type SeveralServices, startServices } from './several-services.js';

/*
 * Everything else about the API is tried on its sources; what runs is the sources joined into few files. Here the two
 * get the same requests on copies of one database, and have to answer the same.
 */

const GARBAGE_EACH = 12;
const SEED = 20_264;
const START_LIMIT_MS = 30_000;
const UUID = /[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}/g;
const MOMENT = /\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z/g;
const TOKEN = /"(token|path)":"[^"]{40,}"/g;

const document = readDocument();
/** Without those that end the sign-in that the others need, and the one whose answer does not end. */
const routes = routesOf(document).filter(
  ({ method, path, streams }) => !streams && !(method === 'delete' && path.startsWith('/sign-ins')),
);

interface Candidate extends SignedIn {
  readonly address: string;
}
interface Answer {
  readonly status: number;
  readonly text: string;
}

let database: Awaited<ReturnType<typeof startThrowaway>>;
let services: SeveralServices;
let singleFiles: ChildProcess;
let joined: Candidate;
let single: Candidate;
let teamId: string;
let ids: ReadonlyMap<string, string>;
beforeAll(async () => {
  database = await startThrowaway();
  const filled = await createDatabase(database.url, 'filled');
  await migrate(filled);
  const env = { PATH: process.env['PATH'], DATABASE_URL: filled };
  await promisify(execFile)(process.execPath, ['apps/api/dist/seed-demo.js'], { cwd: clone, env });
  const copy = await createDatabase(database.url, 'copy', nameOf(filled));
  services = await startServices(filled, 1);
  const port = await anyFreePort('127.0.0.1');
  singleFiles = spawn(process.execPath, ['apps/api/dist/main.js'], {
    cwd: clone,
    env: { ...env, NODE_ENV: 'production', LOG_LEVEL: 'error', DATABASE_URL: copy, PORT: String(port) },
    stdio: 'inherit',
  });
  await waitUntil(() => isReady(`http://127.0.0.1:${port}`), START_LIMIT_MS);
  joined = await candidateAt(services.addresses[0] ?? '');
  single = await candidateAt(`http://127.0.0.1:${port}`);
  // One database is a copy of the other.
  teamId = joined.teamId;
  ids = await idsOfTheDemoTeam();
});
afterAll(async () => {
  await services.stop();
  singleFiles.kill('SIGTERM');
  await once(singleFiles, 'exit');
  await database.stop();
});

describe('the joined service', () => {
  it('answers every read as the single files do', async () => {
    const reads = routes.filter(({ method }) => method === 'get');
    const failed: string[] = [];
    for (const route of reads) {
      const [ours, theirs] = await both(route, undefined);
      expect(comparable(ours), route.path).toEqual(comparable(theirs));
      const isThere = !pathOf(route).includes(ID_OF_NOBODY);
      if (ours.status !== (isThere ? 200 : 404)) failed.push(`${ours.status}: ${route.path}`);
    }
    expect(reads.length).toBeGreaterThan(30);
    expect(failed).toEqual([]);
  });

  it('takes and refuses every write as the single files do', { timeout: 300_000 }, async () => {
    const writes = routes.filter(({ method }) => method !== 'get');
    const statuses = new Map<number, number>();
    for (const [i, route] of writes.entries()) {
      const example = route.fileType
        ? route.fileExample
        : route.body && withOwnIds(exampleOf(document, route.body));
      const garbage = fc
        .sample(garbageFor(document, route, new Map([['teamId', [teamId]]])), {
          numRuns: GARBAGE_EACH,
          seed: SEED + i,
        })
        .map(({ body }) => body);
      for (const body of [example, ...garbage]) {
        const [ours, theirs] = await both(route, body);
        expect(comparable(ours), `${route.method} ${route.path} ${String(body)}`).toEqual(comparable(theirs));
        statuses.set(ours.status, (statuses.get(ours.status) ?? 0) + 1);
      }
    }
    console.log(
      [...statuses]
        .toSorted()
        .map(([status, count]) => `${count} x ${status}`)
        .join(', '),
    );
    // Both took something and refused something, each by its own checks and not at the door.
    expect(statuses.get(201)).toBeGreaterThan(10);
    expect(statuses.get(422)).toBeGreaterThan(50);
    expect([...statuses.keys()].filter((status) => status >= 500)).toEqual([]);
  });
});

const candidateAt = async (address: string): Promise<Candidate> => ({
  address,
  ...(await signInToDemo(address)),
});

/** One thing of each list of the demo team, by the list's name. */
async function idsOfTheDemoTeam(): Promise<Map<string, string>> {
  const found = new Map<string, string>();
  const lists = [
    ...['riders', 'spring-units', 'bikes', 'tracks', 'sessions', 'setups', 'decisions', 'runs', 'test-plans'],
    ...['members', 'tokens'],
  ];
  for (const list of lists) {
    const answer = await fetch(`${joined.address}/api/v1/teams/${teamId}/${list}`, {
      headers: { cookie: joined.cookie },
    });
    const id = /"id":"([^"]+)"/.exec(await answer.text())?.[1];
    if (id !== undefined) found.set(list, id);
  }
  // Both have offered this one by now, under ids of their own: compared are the answers of one that is not there.
  found.set('baselines', ID_OF_NOBODY);
  return found;
}

const FIELDS: Readonly<Record<string, string>> = {
  bikeId: 'bikes',
  trackId: 'tracks',
  riderId: 'riders',
  sessionId: 'sessions',
  setupId: 'setups',
  currentSetupId: 'setups',
  previousSetupId: 'setups',
  forkUnitId: 'spring-units',
};
const idFor = (list: string): string => ids.get(list) ?? ID_OF_NOBODY;

/** The example with ids that the demo team has. */
function withOwnIds(example: unknown): unknown {
  return JSON.parse(JSON.stringify(example), (name, value: unknown) => {
    const list = FIELDS[name];
    return list !== undefined && typeof value === 'string' ? idFor(list) : value;
  });
}

/** The address of a route, of things of the demo team and with the questions that have to be asked. */
function pathOf({ path, method }: Route): string {
  const list = /\{teamId\}\/([\w-]+)\/\{id\}/.exec(path)?.[1] ?? '';
  const filled = path
    .replace('{teamId}', teamId)
    .replace('{id}', idFor(list))
    .replace('{bikeId}', idFor('bikes'))
    .replace('{trackId}', idFor('tracks'))
    .replace('{end}', 'fork');
  const operation = document.paths[`/api/v1${path}`]?.[method] as {
    parameters?: { in: string; name: string; required?: boolean }[];
  };
  const asked = (operation.parameters ?? []).filter((one) => one.in === 'query' && one.required);
  const query = asked.map(({ name }) => `${name}=${idFor(FIELDS[name] ?? '')}`).join('&');
  return query ? `${filled}?${query}` : filled;
}

const both = (route: Route, body: unknown): Promise<[Answer, Answer]> =>
  Promise.all([ask(joined, route, body), ask(single, route, body)]);

async function ask({ address, cookie }: Candidate, route: Route, body: unknown): Promise<Answer> {
  const isRaw = typeof body === 'string' || body instanceof Uint8Array;
  const answer = await fetch(`${address}/api/v1${pathOf(route)}`, {
    method: route.method.toUpperCase(),
    headers: {
      // Where anybody may come in, another sign-in would end the one that the other routes need.
      ...(!route.callers.includes('stranger') && { cookie }),
      'if-match': '"1"',
      ...(body !== undefined && { 'content-type': route.fileType ?? 'application/json' }),
    },
    ...(body !== undefined && { body: isRaw ? (body as string) : JSON.stringify(body) }),
  });
  return { status: answer.status, text: await answer.text() };
}

/** What has to be the same: all but ids, moments and tokens that are made anew. */
const comparable = ({ status, text }: Answer) => ({
  status,
  text: text.replaceAll(UUID, 'id').replaceAll(MOMENT, 'moment').replaceAll(TOKEN, 'token'),
});
