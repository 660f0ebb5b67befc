import type { FastifyRequest } from 'fastify';
import type { z } from 'zod';
import { idSchema } from '../../contract/common.js';
import type { IfRevision, Kept, Page } from '../../garden/store/store.js';
import { ownerOf } from '../auth/owner.js';
import { sendWithETag } from '../negotiation/etag.js';
import { signed } from '../openapi/model.js';
import type { Route } from '../openapi/route.js';
import { keptProblems } from '../problems/common-problems.js';
import {
  changeAsAllowed,
  currentOf,
  idIn,
  listParameters,
  listQuery,
  pageOf,
  queryOf,
  type Repository,
  type ResourceKind,
  refuseQuery,
  resourceNotFound,
} from './resource.js';

/** A list of kept things, by pages. */
export interface Listing<T extends Kept> {
  readonly kind: ResourceKind;
  readonly summary: string;
  readonly schema: z.ZodType;
  readonly list: (owner: string, page: Page & { readonly bed?: string | undefined }) => Promise<T[]>;
  readonly onWire: (kept: T) => object;
  /** Can one bed's be asked for? */
  readonly byBed?: true;
}

const bedParameter = { name: 'bed', schema: idSchema, description: 'Only those of this bed.' };
const listOfBedQuery = listQuery.extend({ bed: idSchema.optional() });
const named = (kind: ResourceKind): string => `${kind[0]!.toUpperCase()}${kind.slice(1)}`;

/** All of one kind that an owner has, by id. */
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

/** Forgets a kept thing that nothing else rests on. */
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

/** Deletes a kept thing as the request's preconditions allow. */
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
