import type { FastifyReply, FastifyRequest } from 'fastify';
import type { z } from 'zod';
import type { ErrorCode } from '../../basics/errors.js';

/** A query parameter in the OpenAPI document. */
export interface QueryParameter {
  readonly name: string;
  readonly schema: z.ZodType;
  readonly required?: boolean;
  readonly description?: string;
}

/** A route's entry in the OpenAPI document. */
export interface Operation {
  readonly id: string;
  readonly summary: string;
  readonly description?: string;
  readonly query?: readonly QueryParameter[];
  /** The JSON body, and an example that works. */
  readonly json?: {
    readonly schema: z.ZodType;
    readonly example: unknown;
    /** Fields of the answer that may be sent back and are ignored. */
    readonly readOnly?: readonly string[];
  };
  /** True if a page's form may send the JSON's fields; the answer is then a 303 to a page. */
  readonly form?: true;
  /** An example of the file, if the body may be one. */
  readonly csv?: { readonly example: string };
  /** `mayCreate`: 201 if created; `mayTakeLonger`: 202 if it is not done yet; `picture`: also as SVG, if Accept prefers it; `orJson`: JSON instead, if Accept prefers it; `none`: 204 without a body. */
  readonly answer:
    | { readonly schema: z.ZodType; readonly mayCreate?: true; readonly mayTakeLonger?: true; readonly picture?: true }
    | { readonly mediaType: string; readonly orJson?: z.ZodType }
    | 'none';
  /** True if it honours If-Match. */
  readonly ifMatch?: true;
  /** True if it honours If-None-Match, which then names what must not exist yet. */
  readonly ifNoneMatch?: true;
  readonly problems: readonly ErrorCode[];
}

export interface Route {
  readonly method: 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';
  /** `:name` stands for a path parameter. */
  readonly url: string;
  readonly operation: Operation;
  /** True if no key is needed; `by-token`: the request holds a secret, and counts against the address. */
  readonly open?: true | 'by-token';
  readonly handler: (request: FastifyRequest, reply: FastifyReply) => unknown;
}
