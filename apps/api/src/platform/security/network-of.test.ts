import { describe, expect, it } from 'vitest';
import { networkOf } from './network-of.js';

describe('the place that tries come from', () => {
  it.each([
    ['192.0.2.7', '192.0.2.7'],
    ['::ffff:192.0.2.7', '192.0.2.7'],
    ['::FFFF:192.0.2.7', '192.0.2.7'],
    ['2001:db8:1:2::1', '2001:db8:1:2'],
    ['2001:db8:1:2:aaaa:bbbb:cccc:dddd', '2001:db8:1:2'],
    ['2001:0DB8:0001:0002::1', '2001:db8:1:2'],
    ['2001:db8::1', '2001:db8:0:0'],
    ['2001:db8::2:3:4:5:6', '2001:db8:0:2'],
    ['2001:db8:1::', '2001:db8:1:0'],
    ['fe80::1%eth0', 'fe80:0:0:0'],
    ['::1', '0:0:0:0'],
    ['::', '0:0:0:0'],
    ['64:ff9b::192.0.2.7', '64:ff9b:0:0'],
    ['not an address', 'not an address'],
  ])('of %s is %s', (address, network) => {
    expect(networkOf(address)).toBe(network);
  });
});
