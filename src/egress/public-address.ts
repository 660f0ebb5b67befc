import { BlockList, isIPv4, isIPv6 } from 'node:net';

/** Ranges of IPv4 that are not public, with their documents (IANA special-purpose address registry, RFC 6890). */
const notPublicV4: readonly (readonly [network: string, prefix: number])[] = [
  ['0.0.0.0', 8], // this host, unspecified: RFC 1122, section 3.2.1.3
  ['10.0.0.0', 8], // private: RFC 1918
  ['100.64.0.0', 10], // shared by carriers: RFC 6598
  ['127.0.0.0', 8], // loopback: RFC 1122, section 3.2.1.3
  ['168.63.129.16', 32], // a hosting company's own service, beside its machines, in a public range: its handbook
  ['169.254.0.0', 16], // link-local, and there the metadata of hosted machines: RFC 3927
  ['172.16.0.0', 12], // private: RFC 1918
  ['192.0.0.0', 24], // protocol assignments: RFC 6890
  ['192.0.2.0', 24], // documentation: RFC 5737
  ['192.88.99.0', 24], // relays of 6to4, withdrawn: RFC 7526
  ['192.168.0.0', 16], // private: RFC 1918
  ['198.18.0.0', 15], // benchmarks: RFC 2544
  ['198.51.100.0', 24], // documentation: RFC 5737
  ['203.0.113.0', 24], // documentation: RFC 5737
  ['224.0.0.0', 4], // multicast: RFC 5771
  ['240.0.0.0', 4], // reserved, and broadcast: RFC 1112, RFC 919
];

/**
 * Ranges within global unicast, 2000::/3 (RFC 4291), that are not public. No address outside of it is public: loopback,
 * link-local, unique local, multicast, IPv4-mapped (RFC 4291, RFC 4193) and NAT64 (RFC 6052, RFC 8215) lie there.
 */
const notPublicV6: readonly (readonly [network: string, prefix: number])[] = [
  ['2001::', 23], // protocol assignments, among them Teredo: RFC 2928, RFC 4380
  ['2001:db8::', 32], // documentation: RFC 3849
  ['2002::', 16], // 6to4, which holds an IPv4 address: RFC 3056
  ['3fff::', 20], // documentation: RFC 9637
];

const refused = new BlockList();
for (const [network, prefix] of notPublicV4) refused.addSubnet(network, prefix, 'ipv4');
for (const [network, prefix] of notPublicV6) refused.addSubnet(network, prefix, 'ipv6');
const globalUnicast = new BlockList();
globalUnicast.addSubnet('2000::', 3, 'ipv6');

/**
 * True for an address on the public internet: not of this machine, its network or its hosting company.
 *
 * @param address An IPv4 or IPv6 address as text, without brackets; anything else is not public.
 */
export function isPublicAddress(address: string): boolean {
  if (isIPv4(address)) return !refused.check(address, 'ipv4');
  if (!isIPv6(address) || address.includes('%')) return false;
  return globalUnicast.check(address, 'ipv6') && !refused.check(address, 'ipv6');
}
