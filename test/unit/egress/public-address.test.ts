import { isIP } from 'node:net';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isPublicAddress } from '../../../src/egress/public-address.js';

/** First and last addresses of ranges that are not public, and neighbours just outside that are, where there are any. */
const ranges: readonly (readonly [what: string, inside: readonly string[], outside: readonly string[]])[] = [
  ['this host, RFC 1122', ['0.0.0.0', '0.255.255.255'], ['1.0.0.0']],
  ['private, RFC 1918', ['10.0.0.0', '10.255.255.255'], ['9.255.255.255', '11.0.0.0']],
  ['private, RFC 1918', ['172.16.0.0', '172.31.255.255'], ['172.15.255.255', '172.32.0.0']],
  ['private, RFC 1918', ['192.168.0.0', '192.168.255.255'], ['192.167.255.255', '192.169.0.0']],
  ['shared by carriers, RFC 6598', ['100.64.0.0', '100.127.255.255'], ['100.63.255.255', '100.128.0.0']],
  ['loopback, RFC 1122', ['127.0.0.1', '127.255.255.255'], ['126.255.255.255', '128.0.0.0']],
  ['link-local, RFC 3927', ['169.254.0.0', '169.254.169.254', '169.254.255.255'], ['169.253.255.255', '169.255.0.0']],
  ['protocol assignments, RFC 6890', ['192.0.0.0', '192.0.0.255'], ['192.0.1.0']],
  [
    'documentation, RFC 5737',
    ['192.0.2.0', '192.0.2.255', '198.51.100.7', '203.0.113.7'],
    ['192.0.3.0', '203.0.114.0'],
  ],
  ['6to4 relays, RFC 7526', ['192.88.99.1'], ['192.88.98.255', '192.88.100.0']],
  ['benchmarks, RFC 2544', ['198.18.0.0', '198.19.255.255'], ['198.17.255.255', '198.20.0.0']],
  ['multicast, RFC 5771', ['224.0.0.1', '239.255.255.255'], ['223.255.255.255']],
  ['reserved, RFC 1112, and broadcast, RFC 919', ['240.0.0.0', '255.255.255.255'], []],
  ['a hosting company beside its machines', ['168.63.129.16'], ['168.63.129.15', '168.63.129.17']],
  ['unspecified, RFC 4291', ['::'], []],
  ['loopback, RFC 4291', ['::1', '0:0:0:0:0:0:0:1'], []],
  ['IPv4-mapped, RFC 4291', ['::ffff:127.0.0.1', '::ffff:7f00:1', '::ffff:8.8.8.8'], []],
  ['IPv4-compatible, RFC 4291', ['::7f00:1', '::127.0.0.1'], []],
  ['NAT64, RFC 6052 and RFC 8215', ['64:ff9b::7f00:1', '64:ff9b::8.8.8.8', '64:ff9b:1::1'], []],
  ['discard only, RFC 6666', ['100::1'], []],
  ['Teredo, RFC 4380, and other assignments, RFC 2928', ['2001::1', '2001:1ff:ffff::'], ['2001:200::1']],
  ['documentation, RFC 3849', ['2001:db8::', '2001:db8:ffff::1'], ['2001:db9::1']],
  ['documentation, RFC 9637', ['3fff::', '3fff:fff::1'], ['3fff:1000::1']],
  ['6to4, RFC 3056', ['2002:7f00:1::', '2002:0808:0808::1'], ['2003::1']],
  ['unique local, RFC 4193', ['fc00::1', 'fd00:ec2::254', 'fdff::1'], []],
  ['link-local, RFC 4291', ['fe80::1', 'fe80::1%eth0', 'febf::1'], []],
  ['site-local, RFC 3879', ['fec0::1'], []],
  ['multicast, RFC 4291', ['ff02::1'], []],
  ['never assigned', ['4000::1', 'e000::1', '1fff::1'], ['3ffe::1', '2000::1']],
];

describe('an address is public', () => {
  test.each(ranges)('unless it is of these: %s', (_, inside, outside) => {
    expect(inside.filter(isPublicAddress)).toEqual([]);
    expect(outside.filter((address) => !isPublicAddress(address))).toEqual([]);
  });

  test('only as an address, written whole', () => {
    for (const text of ['', 'localhost', '127.1', '0x7f.0.0.1', '2130706433', '8.8.8.8 ', '[2000::1]', '8.8.8.8/32']) {
      expect(isPublicAddress(text), text).toBe(false);
    }
  });

  test('and whatever holds an IPv4 address in an IPv6 one is not', () => {
    fc.assert(
      fc.property(fc.ipV4(), fc.constantFrom('::ffff:', '::', '64:ff9b::'), (address, prefix) => {
        expect(isIP(prefix + address)).toBe(6);
        expect(isPublicAddress(prefix + address)).toBe(false);
      }),
    );
  });
});
