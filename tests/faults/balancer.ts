import { createServer, request } from 'node:http';
import type { AddressInfo } from 'node:net';
import { isReady } from './house.js';

const ASK_EVERY_MS = 100;

export interface Balancer {
  readonly address: string;
  /** How many requests each process has got. */
  readonly counts: readonly number[];
  stop(): Promise<void>;
}

/** A plain balancer: the next request goes to the next process that says it is ready. It repeats nothing. */
export async function startBalancer(processes: readonly string[]): Promise<Balancer> {
  const ready = processes.map(() => false);
  const counts = processes.map(() => 0);
  const askAll = () =>
    Promise.all(processes.map(async (address, i) => (ready[i] = await isReady(address)))).then(
      () => undefined,
    );
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
    stop: async () => {
      clearInterval(timer);
      server.closeAllConnections();
      await new Promise((closed) => server.close(closed));
    },
  };
}
