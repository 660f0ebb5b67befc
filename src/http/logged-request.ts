import type { FastifyRequest } from 'fastify';

/** What the log says of a request: all but the secret that a calendar's address holds. */
export const loggedRequest = ({ method, url, host, ip }: FastifyRequest) => ({
  method,
  url: url.replaceAll(/([?&]token=)[^&]*/gi, '$1[Redacted]'),
  host,
  remoteAddress: ip,
});
