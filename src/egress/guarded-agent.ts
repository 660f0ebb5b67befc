import { lookup as lookUp } from 'node:dns/promises';
import { isIP, isIPv6, type LookupFunction } from 'node:net';
import { Agent, buildConnector } from 'undici';
import { AddressRefused } from './address-refused.js';

/** Resolves a host name to all its addresses. */
export type Resolve = (hostname: string) => Promise<readonly string[]>;

export interface GuardSettings {
  /** True for an address that may be connected to. */
  readonly isAllowed: (address: string) => boolean;
  readonly resolve?: Resolve;
  readonly connectMs: number;
  readonly headersMs: number;
  /** The longest pause within an answer [ms]. */
  readonly silenceMs: number;
}

const resolveByDns: Resolve = async (hostname) => (await lookUp(hostname, { all: true })).map(({ address }) => address);

/**
 * An agent that connects to allowed addresses only, whatever host names resolve to them.
 *
 * A name is resolved once for each connection, when connecting, and the connection goes to the very addresses that were
 * checked, so that DNS rebinding gains nothing. If one address of a name is not allowed, the whole name is refused with
 * `AddressRefused`.
 */
export function guardedAgent({ isAllowed, resolve = resolveByDns, ...limits }: GuardSettings): Agent {
  const lookup: LookupFunction = (hostname, options, callback) => {
    resolve(hostname).then(
      (addresses) => {
        if (addresses.length === 0 || !addresses.every(isAllowed)) {
          callback(new AddressRefused(hostname), '');
          return;
        }
        const all = addresses.map((address) => ({ address, family: isIPv6(address) ? 6 : 4 }));
        if (options.all) callback(null, all);
        else callback(null, all[0]!.address, all[0]!.family);
      },
      (error: NodeJS.ErrnoException) => callback(error, ''),
    );
  };
  const connect = buildConnector({ timeout: limits.connectMs, lookup });
  return new Agent({
    headersTimeout: limits.headersMs,
    bodyTimeout: limits.silenceMs,
    connect(options, callback) {
      const hostname = options.hostname.replace(/^\[|\]$/g, '');
      // A literal IP address is never resolved, so it is checked here.
      if (isIP(hostname) && !isAllowed(hostname)) callback(new AddressRefused(hostname), null);
      else connect(options, callback);
    },
  });
}
