import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { type Note, notUnderstood, RequestError } from '../../basics/errors.js';
import type { Fact } from '../../basics/fact.js';
import { fieldFact } from '../../basics/field-facts.js';
import { idSchema } from '../../contract/common.js';
import { keptRefusal } from '../../contract/request/refusal-facts.js';
import { type IfRevision, NO_REVISION } from '../../garden/store/resource.js';
import type { Kept, Put } from '../../garden/store/store.js';
import { ownerOf } from '../auth/owner.js';
import { codingFor, isWorthPacking } from '../negotiation/coding.js';
import { codedTag, matchesTag, tagOf, unworded } from '../negotiation/etag.js';
import { signed } from '../openapi/model.js';
import type { QueryParameter } from '../openapi/route.js';
import { problemStatuses } from '../problems/problems.js';
import { asRequestError } from '../problems/request-error.js';
import { read } from '../question/read.js';

export type ResourceKind = 'place' | 'bed' | 'lot' | 'sowing' | 'subscription' | 'plan' | 'session';

/** The id in the path. A malformed id is 404, except on PUT, which explains the format. */
export function idIn(request: FastifyRequest, kind: ResourceKind): string {
  const { id } = request.params as { id: string };
  if (idSchema.safeParse(id).success) return id;
  if (request.method !== 'PUT') throw resourceNotFound(kind, id);
  throw notUnderstood([{ parameter: 'id', detail: fieldFact('field.path-id') }]);
}

export const resourceNotFound = (kind: ResourceKind, id: string): RequestError =>
  new RequestError('not-found', keptRefusal('not-found.kept', { kind, id: id.slice(0, 64) }));

/** The resource in a request's path. @throws {RequestError} `not-found`. */
export async function keptIn<T>(
  request: FastifyRequest,
  kind: ResourceKind,
  find: (owner: string, id: string) => Promise<T | undefined>,
): Promise<T> {
  const id = idIn(request, kind);
  const kept = await find(ownerOf(request), id);
  if (!kept) throw resourceNotFound(kind, id);
  return kept;
}

/** A refusal of a resource that names another, in the field of that name, which does not exist. */
export const noSuch = (kind: 'place' | 'bed' | 'lot', id: string): RequestError =>
  new RequestError(`unknown-${kind}`, keptRefusal(`unknown-${kind}`, { id }), [
    { path: [kind], detail: keptRefusal(`unknown-${kind}.field`) },
  ]);

/** Parses the query. */
export const queryOf = <Schema extends z.ZodType>(schema: Schema, request: FastifyRequest): z.output<Schema> =>
  read(schema, request.query, (path) => ({ parameter: String(path[0] ?? '') }));

const noQuery = z.strictObject({});
/** Refuses a query on a route without one. */
export const refuseQuery = (request: FastifyRequest): void => void queryOf(noQuery, request);

const MAX_ON_A_PAGE = 100;

/** The query of a paged list. */
export const listQuery = z.strictObject({
  after: idSchema.optional(),
  limit: z.coerce.number().int().min(1).max(MAX_ON_A_PAGE).default(MAX_ON_A_PAGE),
});
export const listParameters: readonly QueryParameter[] = [
  { name: 'after', schema: idSchema, description: 'Return only ids after this one.' },
  { name: 'limit', schema: z.int().min(1).max(MAX_ON_A_PAGE).default(MAX_ON_A_PAGE) },
];

/** One page, and the id to continue after. */
export async function pageOf<T extends Kept>(
  { after, limit }: z.output<typeof listQuery>,
  list: (page: { after: string | undefined; limit: number }) => Promise<T[]>,
): Promise<{ page: T[]; next: string | null }> {
  const rows = await list({ after, limit: limit + 1 });
  const page = rows.slice(0, limit);
  return { page, next: rows.length > limit ? page.at(-1)!.id : null };
}

/** The present state of a resource, to compare preconditions with. */
export interface Current {
  /** The revision that a change replaces; null: there is no resource. */
  readonly revision: number | null;
  /** Content of its weak tag: what a GET shows, or everything it depends on. Left out: there is no resource. */
  readonly inputs?: (() => object | Promise<object>) | undefined;
}

const NOTHING: Current = { revision: null };

/**
 * The reason why a change's preconditions fail; null: they hold. If-Match comes before If-None-Match (RFC 9110,
 * 13.2.2).
 *
 * If-Match takes a revision as a strong tag, and also the resource's weak tag, which RFC 9110 (13.1.1) would not.
 */
async function preconditionFault({ headers }: FastifyRequest, { revision, inputs }: Current): Promise<Fact | null> {
  const wanted = headers['if-match'];
  if (wanted !== undefined && !(inputs && (await namesCurrent(wanted, revision, inputs)))) {
    if (UNQUOTED.test(wanted)) {
      return keptRefusal('precondition-failed.unquoted', { tag: wanted.trim() });
    }
    return keptRefusal(inputs ? 'precondition-failed.changed' : 'precondition-failed.nothing-kept');
  }
  const unwanted = headers['if-none-match'];
  if (unwanted === undefined || !inputs || !(await namesCurrent(unwanted, revision, inputs))) return null;
  return keptRefusal('precondition-failed.something-kept');
}

/** A revision without quotes, as in a body, which is no tag (RFC 9110, 8.8.3). */
const UNQUOTED = /^\s*\d{1,16}\s*$/;

/** Tags without their coding: preconditions compare the resource, however its answer was encoded. */
const uncoded = (tags: string): string =>
  tags
    .split(',')
    .map((tag) => tag.trim().replace(/-(?:br|gzip)"$/, '"'))
    .join();

/** True if a list of tags names the present state of a resource. */
async function namesCurrent(
  tags: string,
  revision: number | null,
  inputs: () => object | Promise<object>,
): Promise<boolean> {
  return (
    (revision !== null && matchesTag(uncoded(tags), weakTagOf(revision))) ||
    matchesTag(unworded(tags), tagOf(await inputs()))
  );
}

const strongTagOf = (revision: number): string => `"${revision}"`;
/** In the form that matchesTag compares. */
const weakTagOf = (revision: number): string => `W/${strongTagOf(revision)}`;

/**
 * Changes a resource as the request's preconditions allow. The change replaces exactly the state that they were
 * compared with: after a concurrent change the resource is read again. A failed precondition is reported only for a
 * change that would otherwise have been made (RFC 9110, 13.2.1), so the change is tried at a revision that the resource
 * never has.
 *
 * @param look The present state of the resource.
 * @param change Makes the change at that revision; returns `stale` if the resource has another.
 */
export async function changeAsAllowed<Done>(
  request: FastifyRequest,
  look: () => Promise<Current>,
  change: (ifRevision: IfRevision) => Promise<Done | 'stale'>,
): Promise<Done> {
  const isConditional = request.headers['if-match'] !== undefined || request.headers['if-none-match'] !== undefined;
  for (;;) {
    const current = isConditional ? await look() : undefined;
    const fault = current ? await preconditionFault(request, current) : null;
    const done = await change(fault === null ? current?.revision : NO_REVISION);
    if (done !== 'stale') return done;
    if (fault !== null) throw new RequestError('precondition-failed', fault);
  }
}

/** The shown resource, and the content of its tag. */
export interface ShownResource {
  readonly inputs: object;
  answer(): object | Promise<object>;
}

/** How resources of one kind are stored and shown. */
export interface Repository<T extends Kept, Fields> {
  find(owner: string, id: string): Promise<T | undefined>;
  put(owner: string, id: string, fields: Fields, ifRevision: IfRevision): Promise<Put<T>>;
  show(kept: T, owner: string): ShownResource | Promise<ShownResource>;
  /** Fields shown on creation and never again. */
  shownOnce?(kept: T): object;
  /** The part shown of a resource that cannot be shown whole, for this reason. */
  showInPart?(kept: T, why: Note): object;
}

/** A resource that is shown as it is stored. */
export const asKept = (content: object): ShownResource => ({ inputs: content, answer: () => content });

/** The revision that a change is based on: that of the fields, if the resource's contents have another. */
export const revisionOf = (kept: Kept & { readonly fieldsRevision?: number }): number =>
  kept.fieldsRevision ?? kept.revision;

/** The present state of a resource for preconditions. */
export const currentOf = <T extends Kept>(
  kept: T | undefined,
  show: (kept: T) => ShownResource | Promise<ShownResource>,
): Current => (kept ? { revision: revisionOf(kept), inputs: async () => (await show(kept)).inputs } : NOTHING);

/**
 * Puts a resource and answers with its new state. After a concurrent change it is read again: what a precondition
 * names, and what a PATCH adds to, is always what the change replaces.
 *
 * @param fieldsFrom The new fields, given the stored resource.
 */
export async function putAndAnswer<T extends Kept, Fields>(
  request: FastifyRequest,
  reply: FastifyReply,
  id: string,
  keeper: Repository<T, Fields>,
  fieldsFrom: (before: T | undefined) => Fields,
  clock: () => Date,
): Promise<FastifyReply> {
  const { find, put, show, shownOnce } = keeper;
  const owner = ownerOf(request);
  for (;;) {
    const before = await find(owner, id);
    const fields = fieldsFrom(before);
    const current = currentOf(before, (kept) => show(kept, owner));
    const fault = await preconditionFault(request, current);
    const done = await put(owner, id, fields, fault === null ? current.revision : NO_REVISION);
    if (!('kept' in done)) {
      if (fault !== null) throw new RequestError('precondition-failed', fault);
      continue;
    }
    const isNew = done.outcome === 'created';
    const { tag, content } = await wholeOrInPart(keeper, done.kept, owner);
    if (tag !== undefined) reply.header('etag', tag);
    if (isNew && shownOnce) reply.header('cache-control', 'no-store');
    return reply.code(isNew ? 201 : 200).send(signed({ ...content, ...(isNew && shownOnce?.(done.kept)) }, clock()));
  }
}

/**
 * Shows a resource just stored. A 503 would mean that nothing was changed, so parts that cannot be shown now are left
 * out, and the tag with them.
 */
async function wholeOrInPart<T extends Kept>(
  { show, showInPart }: Pick<Repository<T, never>, 'show' | 'showInPart'>,
  kept: T,
  owner: string,
): Promise<{ readonly tag?: string; readonly content: object }> {
  try {
    const { inputs, answer } = await show(kept, owner);
    const content = await answer();
    return { tag: tagOf(inputs), content };
  } catch (error) {
    const { code } = asRequestError(error);
    if (!showInPart || problemStatuses[code] !== 503) throw error;
    return { content: showInPart(kept, { code, text: [keptRefusal('kept-in-part')] }) };
  }
}

/** The query of a resource that can be requested as stored. */
export const asQueryShape = { as: z.literal('kept').optional() };
const asQuery = z.strictObject(asQueryShape);
export const asParameter: QueryParameter = {
  name: 'as',
  schema: z.enum(['kept']),
  description: '`kept`: only the fields that a PUT takes, with the revision as a strong ETag.',
};

/** True if the resource is requested as stored; any other query is refused. */
export const isAskedAsKept = (request: FastifyRequest): boolean => queryOf(asQuery, request).as === 'kept';

/** Sends the fields that a PUT takes, under the revision that If-Match takes; 304 if the caller has them already. */
export function sendAsKept(
  request: FastifyRequest,
  reply: FastifyReply,
  revision: number,
  content: object,
): FastifyReply {
  const body = JSON.stringify(content);
  const coding = isWorthPacking(body) ? codingFor(request.headers['accept-encoding']) : undefined;
  reply.header('etag', codedTag(strongTagOf(revision), coding)).header('vary', 'Accept, Accept-Encoding');
  const known = request.headers['if-none-match'];
  if (known !== undefined && matchesTag(uncoded(known), weakTagOf(revision))) return reply.code(304).send();
  return reply.type('application/json; charset=utf-8').send(body);
}

/** The fields of a shown resource that a PUT takes. */
export const fieldsOf = (put: z.ZodObject, shown: object): Record<string, unknown> =>
  Object.fromEntries(Object.entries(shown).filter(([name]) => Object.hasOwn(put.shape, name)));

/** The names of shown fields that a PUT does not take. */
export const readOnlyOf = (put: z.ZodObject, answer: z.ZodObject): string[] =>
  Object.keys(answer.shape).filter((name) => !Object.hasOwn(put.shape, name));

/**
 * The body of a PUT. Read-only fields of the resource's answer may be sent back and are ignored, so that the body of a
 * GET can be edited and sent.
 */
export function readPut<Put extends z.ZodObject>(put: Put, answer: z.ZodObject, body: unknown): z.output<Put> {
  if (body === null || typeof body !== 'object' || Array.isArray(body)) return read(put, body);
  const readOnly = readOnlyOf(put, answer);
  return read(put, Object.fromEntries(Object.entries(body).filter(([name]) => !readOnly.includes(name))));
}
