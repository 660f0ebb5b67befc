import { BlockList, isIP } from 'node:net';

/** Networks with a name. */
const NAMED: Readonly<Record<string, readonly string[]>> = {
  loopback: ['127.0.0.0/8', '::1/128'],
  linklocal: ['169.254.0.0/16', 'fe80::/10'],
  uniquelocal: ['10.0.0.0/8', '172.16.0.0/12', '192.168.0.0/16', 'fc00::/7'],
};

/**
 * Parses a list of networks, addresses and names of networks, separated by commas: `10.0.0.0/8,loopback`.
 *
 * @returns A test whether an address belongs to them; undefined when the list has anything else in it.
 */
export function networkList(list: string): ((address: string) => boolean) | undefined {
  const networks = new BlockList();
  const entries = list.split(',').map((entry) => entry.trim().toLowerCase());
  for (const entry of entries.flatMap((one) => NAMED[one] ?? [one])) {
    const [address, bits, ...more] = entry.split('/') as [string, ...string[]];
    const version = isIP(address);
    const longest = version === 6 ? 128 : 32;
    const length = bits === undefined ? longest : /^\d{1,3}$/.test(bits) ? Number(bits) : longest + 1;
    if (version === 0 || length > longest || more.length > 0) return undefined;
    networks.addSubnet(address, length, version === 6 ? 'ipv6' : 'ipv4');
  }
  return (address) => {
    // A dual-stack socket reports IPv4 peers as IPv4-mapped IPv6 addresses.
    const plain = address.replace(/^::ffff:(?=\d+\.)/i, '');
    const version = isIP(plain);
    return version !== 0 && networks.check(plain, version === 6 ? 'ipv6' : 'ipv4');
  };
}
