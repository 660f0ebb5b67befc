import type { FastifyInstance, FastifyRequest } from 'fastify';

/** Media type of a page's form without a script. */
export const FORM = 'application/x-www-form-urlencoded';

const FORM_LIMIT_BYTES = 16 * 1024;

/** Parses forms into records of their fields, in this scope alone: elsewhere they stay refused. */
export function addFormBody(scope: FastifyInstance): void {
  scope.addContentTypeParser(
    FORM,
    { parseAs: 'string', bodyLimit: FORM_LIMIT_BYTES },
    async (_: FastifyRequest, body: string) => Object.fromEntries(new URLSearchParams(body)),
  );
}

/** True if the body is a form. */
export const isForm = ({ headers }: FastifyRequest): boolean =>
  /^application\/x-www-form-urlencoded\b/i.test(headers['content-type'] ?? '');
