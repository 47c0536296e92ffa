import { Agent, type IncomingMessage, request } from 'node:http';
import { setTimeout as sleep } from 'node:timers/promises';

/** One request, as plain as it can be sent. */
export interface Call {
  readonly method: 'GET' | 'POST';
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body?: string;
}

export interface Figures {
  readonly count: number;
  readonly perSecond: number;
  /** Times from the first byte sent to the last received, ms. */
  readonly median: number;
  readonly p95: number;
  readonly p99: number;
}

/**
 * Sends from `connections` connections for `seconds`, a request every `everyMs` from each, evenly spread over all, and
 * measures each from the moment at which it was due: one that had to wait for the one before it counts as slow.
 * @throws Error on the first answer that is no success: figures of refusals would mean nothing.
 */
export async function pacedLoad(
  address: string,
  next: () => Call,
  { connections, seconds, everyMs }: { connections: number; seconds: number; everyMs: number },
): Promise<Figures> {
  const agent = new Agent({ keepAlive: true, maxSockets: connections });
  const times: number[] = [];
  const start = performance.now();
  const connection = async (_: unknown, index: number) => {
    const first = start + (index * everyMs) / connections;
    for (let due = first; due < start + seconds * 1e3; due += everyMs) {
      await sleep(Math.max(0, due - performance.now()));
      await send(agent, address, next());
      times.push(performance.now() - due);
    }
  };
  await Promise.all(Array.from({ length: connections }, connection));
  agent.destroy();
  return figuresOf(times, (performance.now() - start) / 1e3);
}

/**
 * Keeps `connections` requests under way for `seconds`, each connection sending its next as soon as it has its
 * answer (a closed loop), and measures every one.
 * @throws Error on the first answer that is no success: figures of refusals would mean nothing.
 */
export async function load(
  address: string,
  next: () => Call,
  { connections, seconds }: { connections: number; seconds: number },
): Promise<Figures> {
  const agent = new Agent({ keepAlive: true, maxSockets: connections });
  const times: number[] = [];
  const start = performance.now();
  const end = start + seconds * 1e3;
  const connection = async () => {
    while (performance.now() < end) {
      const sent = performance.now();
      await send(agent, address, next());
      times.push(performance.now() - sent);
    }
  };
  await Promise.all(Array.from({ length: connections }, connection));
  const elapsedSeconds = (performance.now() - start) / 1e3;
  agent.destroy();
  return figuresOf(times, elapsedSeconds);
}

function figuresOf(times: number[], elapsedSeconds: number): Figures {
  times.sort((a, b) => a - b);
  const quantile = (share: number) => times[Math.floor(share * (times.length - 1))] ?? NaN;
  return {
    count: times.length,
    perSecond: times.length / elapsedSeconds,
    median: quantile(0.5),
    p95: quantile(0.95),
    p99: quantile(0.99),
  };
}

function send(agent: Agent, address: string, { method, path, headers, body }: Call): Promise<void> {
  return new Promise((resolve, reject) => {
    const call = request(new URL(path, address), { agent, method, headers }, (answer: IncomingMessage) => {
      let text = '';
      answer.setEncoding('utf8').on('data', (part) => (text += String(part)));
      answer.on('error', reject);
      answer.on('end', () => {
        if (Math.floor((answer.statusCode ?? 0) / 100) === 2) resolve();
        else reject(new Error(`${method} ${path} answered ${String(answer.statusCode)}: ${text}`));
      });
    });
    call.on('error', reject);
    call.end(body);
  });
}
