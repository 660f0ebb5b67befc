import type { FastifyRequest } from 'fastify';
import { completed } from './completed.js';

/** An answer as it goes out: all but its tag, its coding, and what every answer carries. */
export interface Written {
  readonly type: string;
  readonly body: string | Buffer;
  readonly headers?: Readonly<Record<string, string>>;
}

/** @param request Whom its words are for; left out where it holds none. */
export const asJson = (content: object, request?: Pick<FastifyRequest, 'reader' | 'isModelInFull'>): Written => ({
  type: 'application/json; charset=utf-8',
  body: JSON.stringify(request ? completed(content, request) : content),
});
