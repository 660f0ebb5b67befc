import type { IncomingHttpHeaders } from 'node:http';

/** A longer list of proxies is not believed [characters]. */
const MAX_FORWARDED = 2000;
const X_FORWARDED = ['x-forwarded-for', 'x-forwarded-host', 'x-forwarded-proto'] as const;

/**
 * Settles how much of a request's forwarding headers to believe: nothing, unless a trusted proxy sent them. A proxy's
 * `Forwarded` (RFC 7239) is rewritten as the `X-Forwarded-` headers that the rest reads. A proxy that writes one kind
 * passes on a caller's other kind; if the two name different callers, neither is believed.
 */
export function settleForwarded(headers: IncomingHttpHeaders, isFromProxy: boolean): void {
  const { forwarded } = headers;
  if (isFromProxy && forwarded === undefined) return;
  const told = headers['x-forwarded-for']?.toString();
  for (const name of X_FORWARDED) delete headers[name];
  if (!isFromProxy || forwarded === undefined || forwarded.length > MAX_FORWARDED) return;
  const hops = hopsOf(forwarded);
  const { for: caller, host, proto } = hops.at(-1) ?? {};
  if (told !== undefined && lastOf(told) !== caller) return;
  headers['x-forwarded-for'] = hops.map((hop) => hop.for ?? 'unknown').join(', ');
  if (host !== undefined) headers['x-forwarded-host'] = host;
  if (proto !== undefined) headers['x-forwarded-proto'] = proto;
}

interface Hop {
  readonly for?: string;
  readonly host?: string;
  readonly proto?: string;
}

/** Parses `for=192.0.2.60;proto=https, for="[2001:db8::1]:4711"`: one hop for each proxy, the nearest last. */
function hopsOf(header: string): Hop[] {
  return [...header.matchAll(/(?:[^,"]|"(?:[^"\\]|\\.)*")+/g)].map(([element]) => {
    const pairs = [...element.matchAll(/(?:^|;)\s*(for|host|proto)=(?:"((?:[^"\\]|\\.)*)"|([^\s;,"]+))/gi)];
    const said: Record<string, string> = {};
    for (const [, name, quoted, plain] of pairs)
      said[name!.toLowerCase()] = quoted?.replaceAll(/\\(.)/g, '$1') ?? plain!;
    return said.for === undefined ? said : { ...said, for: withoutPort(said.for) };
  });
}

const withoutPort = (node: string): string => /^\[([^\]]*)\]/.exec(node)?.[1] ?? node.replace(/^([\d.]+):\d+$/, '$1');

const lastOf = (list: string): string => withoutPort(list.slice(list.lastIndexOf(',') + 1).trim());
