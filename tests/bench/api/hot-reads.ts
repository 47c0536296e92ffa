import { fork } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { join } from 'node:path';
import { root } from '../../../apps/api/scripts/places.mjs';
import { localAddress } from '../../../apps/api/scripts/process/addresses.mjs';
import { anyFreePort } from '../../../apps/api/scripts/process/ports.mjs';
import type { BareServerTask } from './bare-server.js';
import { HOST, type House } from './house.js';
import { type Figures, load } from './load.js';
import { processorMs } from './processor-time.js';
import { recordStatements, type Recorded } from './statements.js';

const CONNECTIONS = 10;
const POOL_SIZE = 10;
const ROUNDS = 5;
const ROUND_SECONDS = 2;
const WARM_UP_SECONDS = 2;

/**
 * The reads that people wait for most, each as the rate of the service over that of a bare server which sends the
 * same statements. The two take turns, so that whatever else the machine does meets both.
 */
export async function measureHotReads(house: House): Promise<void> {
  const { teamPath, bikeId, trackId, cookie } = house.demo;
  const reads: Record<string, string> = {
    'set-up card': `${teamPath}/setups?bikeId=${bikeId}&limit=2`,
    'pit: the bikes': `${teamPath}/bikes`,
    'baselines of a track': `${teamPath}/baselines?trackId=${trackId}`,
    'newest runs of a bike': `${teamPath}/runs?bikeId=${bikeId}&limit=20`,
  };
  const recorded = await recordStatements(house.settings, cookie, Object.values(reads));
  const bare = await startBareServer(house, recorded);
  try {
    console.log(
      `\nHot reads, ${CONNECTIONS} connections        service    bare   ratio   p95 service / bare (ms)   processor, ms a read`,
    );
    for (const [name, path] of Object.entries(reads)) {
      const statements = recorded.find((read) => read.path === path)?.statements.length ?? 0;
      await compare(
        `${name} (${statements} statements)`,
        { service: house.servicePid, bare: bare.pid },
        (of) => ({ address: of === 'service' ? house.address : bare.address, path, cookie }),
      );
    }
  } finally {
    bare.stop();
  }
}

type Server = 'service' | 'bare';
interface Round {
  readonly figures: Figures;
  /** Processor time of the server for one read, ms. */
  readonly processorMs: number;
}

async function compare(
  name: string,
  pids: Readonly<Record<Server, number | undefined>>,
  read: (of: Server) => { address: string; path: string; cookie: string },
) {
  const measure = async (of: Server, seconds: number): Promise<Round> => {
    const { address, path, cookie } = read(of);
    const before = processorMs(pids[of]);
    const next = () => ({ method: 'GET' as const, path, headers: { cookie } });
    const figures = await load(address, next, { connections: CONNECTIONS, seconds });
    return { figures, processorMs: (processorMs(pids[of]) - before) / figures.count };
  };
  await measure('service', WARM_UP_SECONDS);
  await measure('bare', WARM_UP_SECONDS);
  const rounds: Record<Server, Round>[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    rounds.push({
      service: await measure('service', ROUND_SECONDS),
      bare: await measure('bare', ROUND_SECONDS),
    });
  }
  const middle = (of: (round: Record<Server, Round>) => number) => median(rounds.map(of));
  const both = (of: (round: Round) => number) =>
    `${middle(({ service }) => of(service)).toFixed(1)} / ${middle(({ bare }) => of(bare)).toFixed(1)}`;
  const rate = ({ figures }: Round) => figures.perSecond;
  const columns = [
    middle(({ service }) => rate(service))
      .toFixed(0)
      .padStart(8),
    middle(({ bare }) => rate(bare))
      .toFixed(0)
      .padStart(8),
    middle(({ service, bare }) => rate(service) / rate(bare))
      .toFixed(2)
      .padStart(8),
    both(({ figures }) => figures.p95).padStart(16),
    both((round) => round.processorMs).padStart(20),
  ];
  console.log(`${name.padEnd(38)}${columns.join('')}`);
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? NaN;
}

async function startBareServer(house: House, reads: readonly Recorded[]) {
  const port = await anyFreePort(HOST);
  const server = fork(fileURLToPath(new URL('./bare-server.js', import.meta.url)));
  const { readConfig } = (await import(join(root, 'apps/api/dist/config/config.js'))) as {
    readConfig(environment: NodeJS.ProcessEnv): { appDatabaseUrl: string };
  };
  const databaseUrl = readConfig(house.settings).appDatabaseUrl;
  const task: BareServerTask = { databaseUrl, poolSize: POOL_SIZE, host: HOST, port, reads };
  server.send(task);
  await once(server, 'message');
  return { address: localAddress(HOST, port), pid: server.pid, stop: () => void server.kill() };
}
