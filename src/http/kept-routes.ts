import type { z } from 'zod';
import type { Kept, Page } from '../garden/store.js';
import { sendWithETag } from './etag.js';
import { idIn, type Kind, listParameters, listQuery, notKept, pageOf, queryOf, refuseQuery } from './kept.js';
import { signed } from './model.js';
import { ownerOf } from './owner.js';
import type { Route } from './route.js';
import { idSchema } from './schemas/common.js';
import { keptProblems } from './usual-problems.js';

/** A list of kept things, by pages. */
export interface Listing<T extends Kept> {
  readonly kind: Kind;
  readonly summary: string;
  readonly schema: z.ZodType;
  readonly list: (owner: string, page: Page & { readonly bed?: string | undefined }) => Promise<T[]>;
  readonly onWire: (kept: T) => object;
  /** Can one bed's be asked for? */
  readonly byBed?: true;
}

const bedParameter = { name: 'bed', schema: idSchema, description: 'Only those of this bed.' };
const listOfBedQuery = listQuery.extend({ bed: idSchema.optional() });
const named = (kind: Kind): string => `${kind[0]!.toUpperCase()}${kind.slice(1)}`;

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
export const deleteRoute = (
  kind: Kind,
  summary: string,
  remove: (owner: string, id: string) => Promise<'deleted' | 'absent'>,
): Route => ({
  method: 'DELETE',
  url: `/v1/${kind}s/:id`,
  operation: {
    id: `delete${named(kind)}`,
    summary,
    answer: 'none',
    problems: ['not-found', ...keptProblems],
  },
  async handler(request, reply) {
    refuseQuery(request);
    const id = idIn(request, kind);
    if ((await remove(ownerOf(request), id)) === 'absent') throw notKept(kind, id);
    return reply.code(204).send();
  },
});
