import type { FastifyRequest } from 'fastify';

/** The caller's own request id, if it is safe for a log and a header. */
export const callersIdOf = ({ headers }: Pick<FastifyRequest, 'headers'>): string | undefined => {
  const id = headers['x-request-id'];
  return typeof id === 'string' && /^[A-Za-z0-9._-]{1,64}$/.test(id) ? id : undefined;
};
