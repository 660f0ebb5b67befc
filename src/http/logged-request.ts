import type { FastifyRequest } from 'fastify';

/** What the log says of a request: all but secrets: the one that a calendar's address holds, or a key that was put into one. */
export const loggedRequest = ({ method, url, host, ip }: FastifyRequest) => ({
  method,
  url: url.replaceAll(/([?&](?:token|key)=)[^&]*/gi, '$1[Redacted]'),
  host,
  remoteAddress: ip,
});
