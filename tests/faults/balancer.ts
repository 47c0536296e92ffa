import { createServer, request } from 'node:http';
import type { AddressInfo } from 'node:net';
import { isReady } from './house.js';

const ASK_EVERY_MS = 100;

export interface Balancer {
  readonly address: string;
  /** How many requests each process has got. */
  readonly counts: readonly number[];
  /** Asks every process whether it is ready, now and not only at the next turn. */
  ask(): Promise<void>;
  stop(): Promise<void>;
}

/** A plain balancer: the next request goes to the next process that says it is ready. It repeats nothing. */
export async function startBalancer(processes: readonly string[]): Promise<Balancer> {
  const ready = processes.map(() => false);
  const counts = processes.map(() => 0);
  let asked = 0;
  const newest = processes.map(() => 0);
  const ask = async (address: string, i: number): Promise<void> => {
    const question = (asked += 1);
    const answer = await isReady(address);
    // An answer that comes late says how it was before.
    if (question > (newest[i] ?? 0)) [newest[i], ready[i]] = [question, answer];
  };
  const askAll = async (): Promise<void> => void (await Promise.all(processes.map(ask)));
  await askAll();
  const timer = setInterval(() => void askAll(), ASK_EVERY_MS);
  let turn = 0;
  const next = (): number => {
    for (let i = 1; i <= processes.length; i += 1) {
      const candidate = (turn + i) % processes.length;
      if (ready[candidate]) return (turn = candidate);
    }
    return -1;
  };
  const server = createServer((incoming, outgoing) => {
    const chosen = next();
    const address = processes[chosen];
    if (address === undefined) {
      outgoing.writeHead(502).end();
      return;
    }
    counts[chosen] = (counts[chosen] ?? 0) + 1;
    const { method, headers, url = '' } = incoming;
    // Without connections that are kept: one that its process is just closing would fail a request of ours.
    const passed = request(address + url, { method, headers, agent: false }, (answer) => {
      outgoing.writeHead(answer.statusCode ?? 502, answer.headers);
      answer.pipe(outgoing);
      answer.on('error', () => outgoing.destroy());
    });
    passed.on('error', () => {
      if (outgoing.headersSent) outgoing.destroy();
      else outgoing.writeHead(502).end();
    });
    outgoing.on('close', () => passed.destroy());
    incoming.pipe(passed);
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    counts,
    ask: askAll,
    stop: async () => {
      clearInterval(timer);
      server.closeAllConnections();
      await new Promise((closed) => server.close(closed));
    },
  };
}
