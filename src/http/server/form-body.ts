import type { FastifyInstance, FastifyRequest } from 'fastify';

/** What a page's form is sent as where no script runs. */
export const FORM = 'application/x-www-form-urlencoded';

const FORM_LIMIT_BYTES = 16 * 1024;

/** Has forms understood as records of their fields, in this scope alone: elsewhere they stay refused. */
export function addFormBody(scope: FastifyInstance): void {
  scope.addContentTypeParser(
    FORM,
    { parseAs: 'string', bodyLimit: FORM_LIMIT_BYTES },
    async (_: FastifyRequest, body: string) => Object.fromEntries(new URLSearchParams(body)),
  );
}

/** Is the body a form? */
export const isForm = ({ headers }: FastifyRequest): boolean =>
  /^application\/x-www-form-urlencoded\b/i.test(headers['content-type'] ?? '');
