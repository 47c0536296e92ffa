import { Agent, type IncomingMessage, request } from 'node:http';

/** One request, as plain as it can be sent. */
export interface Call {
  readonly method: 'GET' | 'POST';
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body?: string;
}

export interface Figures {
  readonly perSecond: number;
  /** Times from the first byte sent to the last received, ms. */
  readonly median: number;
  readonly p95: number;
  readonly p99: number;
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
  times.sort((a, b) => a - b);
  const quantile = (share: number) => times[Math.floor(share * (times.length - 1))] ?? NaN;
  return {
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
