import { readFileSync } from 'node:fs';
import { Agent, type IncomingMessage, request } from 'node:http';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readDocument, routesOf, type Route } from '../api/support/open-api.js';
import { signInToDemo } from './demo-sign-in.js';
import { garbageFor, type GarbageRequest } from './garbage.js';
import { type House, isReady, makeHouse } from './house.js';

const REQUESTS = 20_000;
const SEED = Number(process.env['GARBAGE_SEED'] ?? 20_261);
const CONNECTIONS = 8;
/** A request is given up as hanging after this long; the slowest is printed. */
const HANG_MS = 10_000;
/** Memory counts from here on: by then all code is loaded and all caches are full. */
const WARM_AFTER = 5_000;
/** The collector of a busy process leaves this much to come and go. */
const SWING_MIB = 120;

const document = readDocument();
/** Those that end the session that all others need. */
const ENDS_SESSION = ['DELETE /sign-ins', 'DELETE /sign-ins/current', 'POST /sign-ins', 'POST /accounts'];
const routes = routesOf(document).filter(
  ({ method, path }) => !ENDS_SESSION.includes(`${method.toUpperCase()} ${path}`),
);

let house: House;
let address: string;
let servicePid: number;
beforeAll(async () => {
  house = await makeHouse();
  address = await house.start({ env: { DEMO_TEAM: 'true' } }).address();
  servicePid = house.processes().find(({ command }) => command.includes('service-entry'))?.pid ?? 0;
});
afterAll(() => house.clear());

interface Answer {
  readonly status: number;
  readonly ms: number;
}

describe('garbage from a member of a team', () => {
  it(
    `in ${REQUESTS} requests over all routes never makes the service fail, hang or grow`,
    { timeout: 900_000 },
    async () => {
      const { cookie, teamId } = await signInToDemo(address);
      const agent = new Agent({ keepAlive: true, maxSockets: CONNECTIONS });
      const failed: string[] = [];
      const statuses = new Map<number, number>();
      let slowest = { ms: 0, what: '' };
      let warmMib = 0;
      let sent = 0;
      const next = requests(teamId);
      const connection = async () => {
        for (let garbage = next(); garbage; garbage = next()) {
          sent += 1;
          if (sent === WARM_AFTER) warmMib = residentMib(servicePid);
          const { status, ms } = await send(agent, garbage, cookie);
          const what = `${garbage.method} ${garbage.path.slice(0, 200)} ${String(garbage.body).slice(0, 300)}`;
          statuses.set(status, (statuses.get(status) ?? 0) + 1);
          if (status >= 500 || status === 0) failed.push(`${status}: ${what}`);
          if (ms > slowest.ms) slowest = { ms, what };
        }
      };
      await Promise.all(Array.from({ length: CONNECTIONS }, connection));
      agent.destroy();
      const mib = residentMib(servicePid);
      console.log(
        `${sent} requests: ${[...statuses]
          .sort()
          .map(([status, count]) => `${count} x ${status}`)
          .join(', ')}; ` +
          `slowest ${slowest.ms.toFixed(0)} ms (${slowest.what.slice(0, 80)}); memory ${warmMib.toFixed(0)} -> ${mib.toFixed(0)} MiB`,
      );
      expect(failed.slice(0, 20)).toEqual([]);
      expect(sent).toBe(REQUESTS);
      expect(mib).toBeLessThan(warmMib + SWING_MIB);
      expect(await isReady(address)).toBe(true);
      // Garbage that is taken for a body has reached the checks, and was not all refused at the door.
      expect(statuses.get(422)).toBeGreaterThan(REQUESTS / 10);
    },
  );
});

/** The requests one after another, the routes in turn, always the same for one seed. */
function requests(teamId: string): () => GarbageRequest | undefined {
  const each = Math.ceil(REQUESTS / routes.length);
  const streams = routes.map((route: Route, i) =>
    fc.sample(garbageFor(document, route, teamId), { numRuns: each, seed: SEED + i }),
  );
  let sent = 0;
  return () => {
    if (sent >= REQUESTS) return undefined;
    const garbage = streams[sent % routes.length]?.[Math.floor(sent / routes.length)];
    sent += 1;
    return garbage;
  };
}

/** Status 0: no answer in time, or the connection broke. */
function send(agent: Agent, garbage: GarbageRequest, cookie: string): Promise<Answer> {
  const start = performance.now();
  // Node states no length for the body of a GET: what follows would be taken for a request of its own.
  const length = garbage.body && { 'content-length': String(garbage.body.length) };
  const headers = { ...garbage.headers, ...length, cookie };
  return new Promise((resolve) => {
    const end = (status: number) => resolve({ status, ms: performance.now() - start });
    const call = request(
      address + garbage.path,
      { agent, method: garbage.method, headers, timeout: HANG_MS },
      (answer: IncomingMessage) => {
        const status = answer.statusCode ?? 0;
        // Live events do not end by themselves.
        if (answer.headers['content-type']?.includes('event-stream')) {
          answer.destroy();
          end(status);
        } else answer.resume().on('end', () => end(status));
      },
    );
    call.on('timeout', () => call.destroy());
    call.on('error', () => end(0));
    call.end(garbage.body);
  });
}

function residentMib(pid: number): number {
  const [, kib] = /^VmRSS:\s+(\d+) kB$/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8')) ?? [];
  return Number(kib) / 1024;
}
