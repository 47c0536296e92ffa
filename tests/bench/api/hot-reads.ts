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
 * same statements, one after the other: once as pg sends them by itself, once prepared, as the service sends them. They
 * take turns, so that whatever else the machine does meets all.
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
  const bare = await startBareServer(house, recorded, { prepares: false });
  const prepared = await startBareServer(house, recorded, { prepares: true });
  const servers: Record<Server, Running> = {
    service: { address: house.address, pid: house.servicePid },
    bare,
    prepared,
  };
  try {
    console.log(
      `\nHot reads, ${CONNECTIONS} connections          rate: service / bare / bare, prepared   ratios` +
        `        p95, ms               processor, ms a read`,
    );
    for (const [name, path] of Object.entries(reads)) {
      const statements = recorded.find((read) => read.path === path)?.statements.length ?? 0;
      await compare(`${name} (${statements} statements)`, servers, { path, cookie });
    }
  } finally {
    bare.stop();
    prepared.stop();
  }
}

const SERVERS = ['service', 'bare', 'prepared'] as const;
type Server = (typeof SERVERS)[number];
interface Running {
  readonly address: string;
  readonly pid: number | undefined;
}
interface Round {
  readonly figures: Figures;
  /** Processor time of the server for one read, ms. */
  readonly processorMs: number;
}

async function compare(
  name: string,
  servers: Readonly<Record<Server, Running>>,
  { path, cookie }: { path: string; cookie: string },
): Promise<void> {
  const next = () => ({ method: 'GET' as const, path, headers: { cookie } });
  const measure = async ({ address, pid }: Running, seconds: number): Promise<Round> => {
    const before = processorMs(pid);
    const figures = await load(address, next, { connections: CONNECTIONS, seconds });
    return { figures, processorMs: (processorMs(pid) - before) / figures.count };
  };
  const rounds: Record<Server, Round>[] = [];
  for (const server of SERVERS) await measure(servers[server], WARM_UP_SECONDS);
  for (let round = 0; round < ROUNDS; round += 1) {
    rounds.push({
      service: await measure(servers.service, ROUND_SECONDS),
      bare: await measure(servers.bare, ROUND_SECONDS),
      prepared: await measure(servers.prepared, ROUND_SECONDS),
    });
  }
  const middles = (of: (round: Round) => number, digits: number) =>
    SERVERS.map((server) => median(rounds.map((round) => of(round[server]))).toFixed(digits)).join(' / ');
  const rate = ({ figures }: Round) => figures.perSecond;
  const ratio = (server: Server) =>
    median(rounds.map((round) => rate(round.service) / rate(round[server]))).toFixed(2);
  const columns = [
    middles(rate, 0).padStart(26),
    `${ratio('bare')} / ${ratio('prepared')}`.padStart(26),
    middles(({ figures }) => figures.p95, 1).padStart(24),
    middles((round) => round.processorMs, 2).padStart(24),
  ];
  console.log(`${name.padEnd(38)}${columns.join('')}`);
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? NaN;
}

async function startBareServer(
  house: House,
  reads: readonly Recorded[],
  { prepares }: { prepares: boolean },
): Promise<Running & { stop(): void }> {
  const port = await anyFreePort(HOST);
  const server = fork(fileURLToPath(new URL('./bare-server.js', import.meta.url)));
  const { readConfig } = (await import(join(root, 'apps/api/dist/config/config.js'))) as {
    readConfig(environment: NodeJS.ProcessEnv): { appDatabaseUrl: string };
  };
  const databaseUrl = readConfig(house.settings).appDatabaseUrl;
  const task: BareServerTask = { databaseUrl, poolSize: POOL_SIZE, host: HOST, port, reads, prepares };
  server.send(task);
  await once(server, 'message');
  return { address: localAddress(HOST, port), pid: server.pid, stop: () => void server.kill() };
}
