import { isIPv6 } from 'node:net';
import { digestOf } from '../../basics/digest.js';

/** Callers are stored as digests, so that nobody can read addresses from them. */
const idOf = (kind: 'owner' | 'address', name: string): string => digestOf(`${kind} ${name}`, 22);

/** The id of a calling owner. */
export const ownerId = (owner: string): string => idOf('owner', owner);

/** The id of a caller known only by address. */
export const addressId = (ip: string): string => idOf('address', networkOf(ip));

/** An address; of IPv6 its first 64 bits, as one caller has all the rest. */
function networkOf(ip: string): string {
  if (!isIPv6(ip)) return ip;
  const mapped = /^::ffff:(\d+\.\d+\.\d+\.\d+)$/i.exec(ip)?.[1];
  if (mapped) return mapped;
  const [head = '', tail] = ip.split('%')[0]!.split('::');
  const first = head === '' ? [] : head.split(':');
  const last = tail === undefined || tail === '' ? [] : tail.split(':');
  const groups = [...first, ...Array<string>(Math.max(0, 8 - first.length - last.length)).fill('0'), ...last];
  return groups
    .slice(0, 4)
    .map((group) => Number.parseInt(group, 16).toString(16))
    .join(':');
}
