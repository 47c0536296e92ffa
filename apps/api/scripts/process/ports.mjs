import { randomInt } from 'node:crypto';
import { createServer } from 'node:net';

/** How many ports after the wanted one are tried. */
const NEIGHBOURS = 50;
/**
 * Below those that systems give to connections that go out, from 32768 or 49152 on: whoever ends and listens again at one
 * of these could find that a connection of somebody else, even one to itself, has got it meanwhile.
 */
export const LASTING_PORTS = { first: 20_000, last: 32_767 };
const TRIES = 200;

/** @param {number} port @param {string} host @returns {Promise<number | undefined>} the port, if it can be listened on */
function listenOnce(port, host) {
  return new Promise((resolve) => {
    const server = createServer();
    server.on('error', () => resolve(undefined));
    server.listen({ port, host, exclusive: true }, () => {
      const address = server.address();
      server.close(() => resolve(typeof address === 'object' ? address?.port : undefined));
    });
  });
}

/** @param {number} port @param {string} host */
export async function isFree(port, host) {
  return (await listenOnce(port, host)) !== undefined;
}

/** A port that is free, and that whoever has listened at it can have again. @param {string} host */
export async function anyFreePort(host) {
  for (let tries = 0; tries < TRIES; tries += 1) {
    const port = randomInt(LASTING_PORTS.first, LASTING_PORTS.last + 1);
    if (await isFree(port, host)) return port;
  }
  throw new Error(`No port can be listened on at ${host}.`);
}

/** The wanted port or the first free one after it. @param {number} wanted @param {string} host */
export async function firstFreePort(wanted, host) {
  for (let port = wanted; port <= wanted + NEIGHBOURS; port += 1) {
    if (await isFree(port, host)) return port;
  }
  throw new Error(`No port from ${wanted} to ${wanted + NEIGHBOURS} is free at ${host}.`);
}
