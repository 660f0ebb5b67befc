import type { FastifyRequest } from 'fastify';
import { completed } from './completed.js';

/** An outgoing answer without its tag, its coding, and the fields of every answer. */
export interface Written {
  readonly type: string;
  readonly body: string | Buffer;
  readonly headers?: Readonly<Record<string, string>>;
}

/** @param request Its reader's words are added; left out if the answer holds none. */
export const asJson = (content: object, request?: Pick<FastifyRequest, 'reader' | 'isModelInFull'>): Written => ({
  type: 'application/json; charset=utf-8',
  body: JSON.stringify(request ? completed(content, request) : content),
});
