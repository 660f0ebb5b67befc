import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { notUnderstood, RequestError } from '../basics/errors.js';
import type { Kept, Put } from '../garden/store.js';
import { matchesTag, tagOf } from './etag.js';
import { signed } from './model.js';
import { ownerOf } from './owner.js';
import { read } from './read.js';
import type { QueryParameter } from './route.js';
import { idSchema } from './schemas/common.js';

export type Kind = 'place' | 'bed' | 'lot' | 'sowing' | 'subscription' | 'plan';

/** The id in the path. One that cannot be an id is not there; only who wants to create it is told why. */
export function idIn(request: FastifyRequest, kind: Kind): string {
  const { id } = request.params as { id: string };
  if (idSchema.safeParse(id).success) return id;
  if (request.method !== 'PUT') throw notKept(kind, id);
  throw notUnderstood([{ parameter: 'id', detail: 'in the path must be 1 to 64 of a-z, 0-9 and -' }]);
}

export const notKept = (kind: Kind, id: string): RequestError =>
  new RequestError(
    'not-found',
    `No ${kind} is kept under "${id.slice(0, 64)}"; GET /v1/${kind}s lists those there are.`,
  );

/** A thing that is to be kept names another, in a field of that name, which is not there. */
export const noSuch = (kind: 'place' | 'bed' | 'lot', id: string): RequestError =>
  new RequestError(`unknown-${kind}`, `No ${kind} is kept under "${id}": PUT /v1/${kind}s/${id} first.`, [
    { path: [kind], detail: `There is no such ${kind}.` },
  ]);

/** What the query asks. */
export const queryOf = <Schema extends z.ZodType>(schema: Schema, request: FastifyRequest): z.output<Schema> =>
  read(schema, request.query, (path) => ({ parameter: String(path[0] ?? '') }));

const noQuery = z.strictObject({});
/** Refuses a query where none is asked for. */
export const refuseQuery = (request: FastifyRequest): void => void queryOf(noQuery, request);

const MOST_ON_A_PAGE = 100;

/** The query of a list, by pages. */
export const listQuery = z.strictObject({
  after: idSchema.optional(),
  limit: z.coerce.number().int().min(1).max(MOST_ON_A_PAGE).default(MOST_ON_A_PAGE),
});
export const listParameters: readonly QueryParameter[] = [
  { name: 'after', schema: idSchema, description: 'The id after which to go on.' },
  { name: 'limit', schema: z.int().min(1).max(MOST_ON_A_PAGE).default(MOST_ON_A_PAGE) },
];

/** One page, and the id to go on after. */
export async function pageOf<T extends Kept>(
  { after, limit }: z.output<typeof listQuery>,
  list: (page: { after: string | undefined; limit: number }) => Promise<T[]>,
): Promise<{ page: T[]; next: string | null }> {
  const rows = await list({ after, limit: limit + 1 });
  const page = rows.slice(0, limit);
  return { page, next: rows.length > limit ? page.at(-1)!.id : null };
}

/**
 * Lets a change pass where the request has no If-Match, or has the tag of what is kept now. Tags here are weak ones and
 * compared as such: RFC 9110 (13.1.1) would let no weak tag match.
 *
 * @param current What a GET would show, before it is signed; undefined: there is nothing.
 */
export function requireMatch(request: FastifyRequest, current: object | undefined): void {
  const wanted = request.headers['if-match'];
  if (wanted === undefined || (current !== undefined && matchesTag(wanted, tagOf(current)))) return;
  throw new RequestError(
    'precondition-failed',
    current === undefined
      ? 'Nothing is kept here, so it cannot be in the state that If-Match names. Leave the header out to create it.'
      : 'It has been changed since you read it, so nothing was done. GET it, and send your change again with its new ETag.',
  );
}

/** What is told of a kept thing, and what its tag is made of. */
export interface Shown {
  readonly inputs: object;
  answer(): object | Promise<object>;
}

/** How things of one kind are kept and shown. */
export interface Keeper<T extends Kept, Fields> {
  find(owner: string, id: string): Promise<T | undefined>;
  put(owner: string, id: string, fields: Fields, ifRevision: number | undefined): Promise<Put<T>>;
  show(kept: T, owner: string): Shown | Promise<Shown>;
  /** What is shown of a thing where it is created, and never again. */
  shownOnce?(kept: T): object;
}

/** A thing that is shown as it is kept. */
export const asKept = (content: object): Shown => ({ inputs: content, answer: () => content });

/**
 * Puts a thing and answers with what is then kept. Where somebody else changed it since it was looked at, it is looked at
 * again: what If-Match names, and what a PATCH adds to, is always what the change replaces.
 *
 * @param fieldsFrom What to keep, given what is kept now.
 */
export async function putAndAnswer<T extends Kept, Fields>(
  request: FastifyRequest,
  reply: FastifyReply,
  id: string,
  { find, put, show, shownOnce }: Keeper<T, Fields>,
  fieldsFrom: (before: T | undefined) => Fields,
  clock: () => Date,
): Promise<FastifyReply> {
  const owner = ownerOf(request);
  for (;;) {
    const before = await find(owner, id);
    if (request.headers['if-match'] !== undefined) {
      requireMatch(request, before && (await show(before, owner)).inputs);
    }
    const fields = fieldsFrom(before);
    const done = await put(owner, id, fields, before?.revision);
    if (!('kept' in done)) continue;
    const { inputs, answer } = await show(done.kept, owner);
    return reply
      .code(done.outcome === 'created' ? 201 : 200)
      .header('etag', tagOf(inputs))
      .send(signed({ ...(await answer()), ...(done.outcome === 'created' && shownOnce?.(done.kept)) }, clock()));
  }
}
