import { isIPv6 } from 'node:net';

const GROUPS = 8;
/** What one household or one server is given: 64 bits. */
const GROUPS_OF_NETWORK = 4;

/**
 * What counts as one place that tries come from: an IPv4 address, however it is written, or the first 64 bits of an IPv6
 * address. Who has one of those has all that share them, and could try from another each time.
 */
export function networkOf(address: string): string {
  const plain = address.replace(/^::ffff:(?=\d+\.)/i, '');
  if (!isIPv6(plain)) return plain;
  const [before = '', after = ''] = plain.replace(/%.*$/, '').split('::');
  const [first, last] = [before, after].map((part) => (part === '' ? [] : part.split(':'))) as [
    string[],
    string[],
  ];
  const zeros = Array<string>(GROUPS - first.length - last.length).fill('0');
  return [...first, ...zeros, ...last]
    .slice(0, GROUPS_OF_NETWORK)
    .map((group) => parseInt(group, 16).toString(16))
    .join(':');
}
