import { networkInterfaces } from 'node:os';

/** The addresses that mean "every interface" rather than one. */
const everywhere = new Set(['0.0.0.0', '::']);

/** The address at which this machine itself reaches a service that listens on `host`. @param {string} host @param {number} port */
export function localAddress(host, port) {
  return httpAddress(everywhere.has(host) ? '127.0.0.1' : host, port);
}

/** The addresses at which other machines, such as a phone in the pit, reach it. @param {string} host @param {number} port */
export function networkAddresses(host, port) {
  if (!everywhere.has(host)) return [];
  return Object.values(networkInterfaces())
    .flatMap((list) => list ?? [])
    .filter(({ internal, family }) => !internal && family === 'IPv4')
    .map(({ address }) => httpAddress(address, port));
}

/** @param {string} host @param {number} port */
function httpAddress(host, port) {
  return `http://${host.includes(':') ? `[${host}]` : host}:${port}`;
}
