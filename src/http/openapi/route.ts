import type { FastifyReply, FastifyRequest } from 'fastify';
import type { z } from 'zod';
import type { ErrorCode } from '../../basics/errors.js';

/** A query parameter, as the OpenAPI document describes it. */
export interface QueryParameter {
  readonly name: string;
  readonly schema: z.ZodType;
  readonly required?: boolean;
  readonly description?: string;
}

/** What a route is for, as the OpenAPI document tells it. */
export interface Operation {
  readonly id: string;
  readonly summary: string;
  readonly description?: string;
  readonly query?: readonly QueryParameter[];
  /** The JSON body, and an example that works. */
  readonly json?: {
    readonly schema: z.ZodType;
    readonly example: unknown;
    /** Fields of the answer that may be sent back, and are left out. */
    readonly readOnly?: readonly string[];
  };
  /** May the JSON's fields come from a form of a page as well? It is then sent on to a page, by 303, rather than answered. */
  readonly form?: true;
  /** The example of a file, where the body may be one. */
  readonly csv?: { readonly example: string };
  /** `mayCreate`: 201 where something was created; `picture`: as SVG too, where Accept likes that best; `none`: 204, and no body. */
  readonly answer:
    | { readonly schema: z.ZodType; readonly mayCreate?: true; readonly picture?: true }
    | { readonly mediaType: string }
    | 'none';
  /** Does it heed If-Match? */
  readonly ifMatch?: true;
  /** Does it heed If-None-Match, as what must not be there yet? */
  readonly ifNoneMatch?: true;
  readonly problems: readonly ErrorCode[];
}

export interface Route {
  readonly method: 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';
  /** `:name` stands for a path parameter. */
  readonly url: string;
  readonly operation: Operation;
  /** True where no key is asked for; `by-token`: the request itself holds a secret, and requests count as anyone's. */
  readonly open?: true | 'by-token';
  readonly handler: (request: FastifyRequest, reply: FastifyReply) => unknown;
}
