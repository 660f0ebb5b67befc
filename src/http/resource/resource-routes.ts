import type { FastifyRequest } from 'fastify';
import type { z } from 'zod';
import { idSchema } from '../../contract/common.js';
import { orAsKept } from '../../contract/kept.js';
import type { IfRevision, Kept, Page } from '../../garden/store/store.js';
import { ownerOf } from '../auth/owner.js';
import { sendWithETag } from '../negotiation/etag.js';
import { signed } from '../openapi/model.js';
import type { Route } from '../openapi/route.js';
import { keptProblems } from '../problems/common-problems.js';
import {
  asParameter,
  changeAsAllowed,
  currentOf,
  fieldsOf,
  idIn,
  isAskedAsKept,
  keptIn,
  listParameters,
  listQuery,
  pageOf,
  queryOf,
  type Repository,
  type ResourceKind,
  refuseQuery,
  resourceNotFound,
  revisionOf,
  sendAsKept,
} from './resource.js';

/** A paged list of resources. */
export interface Listing<T extends Kept> {
  readonly kind: ResourceKind;
  readonly summary: string;
  readonly schema: z.ZodType;
  readonly list: (owner: string, page: Page & { readonly bed?: string | undefined }) => Promise<T[]>;
  readonly onWire: (kept: T) => object;
  /** True if the list can be limited to one bed. */
  readonly byBed?: true;
}

const bedParameter = { name: 'bed', schema: idSchema, description: 'Only those of this bed.' };
const listOfBedQuery = listQuery.extend({ bed: idSchema.optional() });
export const named = (kind: ResourceKind): string => `${kind[0]!.toUpperCase()}${kind.slice(1)}`;

/** Lists all resources of one kind of an owner, by id. */
export const listRoute = <T extends Kept>(
  { kind, summary, schema, list, onWire, byBed }: Listing<T>,
  clock: () => Date,
): Route => ({
  method: 'GET',
  url: `/v1/${kind}s`,
  operation: {
    id: `list${named(kind)}s`,
    summary,
    query: byBed ? [...listParameters, bedParameter] : listParameters,
    answer: { schema },
    problems: keptProblems,
  },
  async handler(request, reply) {
    const { bed, ...paging } = byBed
      ? queryOf(listOfBedQuery, request)
      : { ...queryOf(listQuery, request), bed: undefined };
    const { page, next } = await pageOf(paging, (asked) => list(ownerOf(request), { ...asked, bed }));
    const content = { [`${kind}s`]: page.map(onWire), next };
    return sendWithETag(request, reply, content, () => signed(content, clock()));
  },
});

/** How one resource is answered, whole or as a PUT takes it. */
export interface Showing<T extends Kept> {
  readonly kind: ResourceKind;
  readonly summary: string;
  readonly put: z.ZodObject;
  readonly answer: z.ZodObject;
  /** The fields that a PUT takes, among others. */
  readonly onWire: (kept: T) => object;
}

/** Returns one resource. */
export const getRoute = <T extends Kept>(
  { kind, summary, put, answer, onWire }: Showing<T>,
  { find, show }: Pick<Repository<T, never>, 'find' | 'show'>,
  clock: () => Date,
): Route => ({
  method: 'GET',
  url: `/v1/${kind}s/:id`,
  operation: {
    id: `get${named(kind)}`,
    summary,
    query: [asParameter],
    answer: { schema: orAsKept(answer, put) },
    problems: ['not-found', ...keptProblems],
  },
  async handler(request, reply) {
    const isAsKept = isAskedAsKept(request);
    const kept = await keptIn(request, kind, find);
    if (isAsKept) return sendAsKept(request, reply, revisionOf(kept), fieldsOf(put, onWire(kept)));
    const shown = await show(kept, ownerOf(request));
    return sendWithETag(request, reply, shown.inputs, async () => signed(await shown.answer(), clock()));
  },
});

/** Deletes a resource that no other depends on. */
export const deleteRoute = <T extends Kept>(
  kind: ResourceKind,
  summary: string,
  keeperFor: (request: FastifyRequest) => Pick<Repository<T, never>, 'find' | 'show'>,
  remove: (owner: string, id: string, ifRevision: IfRevision) => Promise<'deleted' | 'absent' | 'stale'>,
): Route => ({
  method: 'DELETE',
  url: `/v1/${kind}s/:id`,
  operation: {
    id: `delete${named(kind)}`,
    summary,
    answer: 'none',
    ifMatch: true,
    problems: ['not-found', 'precondition-failed', ...keptProblems],
  },
  async handler(request, reply) {
    refuseQuery(request);
    const id = idIn(request, kind);
    const outcome = await deleteAsAllowed(request, id, keeperFor(request), (owner, ifRevision) =>
      remove(owner, id, ifRevision),
    );
    if (outcome === 'absent') throw resourceNotFound(kind, id);
    return reply.code(204).send();
  },
});

/** Deletes a resource as the request's preconditions allow. */
export function deleteAsAllowed<T extends Kept, Outcome extends string>(
  request: FastifyRequest,
  id: string,
  { find, show }: Pick<Repository<T, never>, 'find' | 'show'>,
  remove: (owner: string, ifRevision: IfRevision) => Promise<Outcome | 'stale'>,
): Promise<Exclude<Outcome, 'stale'>> {
  const owner = ownerOf(request);
  return changeAsAllowed<Exclude<Outcome, 'stale'>>(
    request,
    async () => currentOf(await find(owner, id), (kept) => show(kept, owner)),
    (ifRevision) => remove(owner, ifRevision) as Promise<Exclude<Outcome, 'stale'> | 'stale'>,
  );
}
