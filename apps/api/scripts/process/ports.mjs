import { createServer } from 'node:net';

/** How many ports after the wanted one are tried. */
const NEIGHBOURS = 50;

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

/** A port that the system says is free. @param {string} host */
export async function anyFreePort(host) {
  const port = await listenOnce(0, host);
  if (port === undefined) throw new Error(`No port can be listened on at ${host}.`);
  return port;
}

/** The wanted port or the first free one after it. @param {number} wanted @param {string} host */
export async function firstFreePort(wanted, host) {
  for (let port = wanted; port <= wanted + NEIGHBOURS; port += 1) {
    if (await isFree(port, host)) return port;
  }
  throw new Error(`No port from ${wanted} to ${wanted + NEIGHBOURS} is free at ${host}.`);
}
