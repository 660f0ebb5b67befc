import type { FastifyReply, FastifyRequest } from 'fastify';
import type { z } from 'zod';
import { RequestError } from '../../basics/errors.js';
import type { ForecastBody, ForecastQuery } from '../../contract/forecast.js';
import { keptRefusal } from '../../contract/refusal-facts.js';
import { bedInputsIn, bedRows, keptOf, type PlaceRecords, placeRows } from '../../garden/bed/bed-inputs.js';
import type { Store } from '../../garden/store/store.js';
import type { WorkerPool } from '../../worker/worker-pool.js';
import { ownerOf } from '../auth/owner.js';
import type { AnswerCache } from '../negotiation/answer-cache.js';
import { formOf } from '../negotiation/picture.js';
import type { Written } from '../negotiation/written.js';
import { askedByQuery, type Parameters, parameterAt } from './csv-query.js';
import { readFileBody } from './file-body.js';
import { askedOfFile, inParameters, isFile } from './file-request.js';
import { type Known, type ReadSeriesSet, readBody, readFile, zoneAsked } from './question.js';
import { read } from './read.js';

/** Everything that the routes need beside the request. */
export interface Service {
  readonly clock: () => Date;
  readonly store: Store;
  readonly work: WorkerPool;
  readonly answers: AnswerCache;
}

/** A question about a bed, by body, file or link. */
type AnyQuery = Pick<ForecastQuery, 'where'> & { readonly crop?: ForecastQuery['crop'] | undefined };

/** One kind of question: its body, and its query parameters beside a file. */
export interface EndpointDefinition<A extends AnyQuery> {
  readonly body: z.ZodType<A & { temperatures: ForecastBody['temperatures'] }>;
  readonly asking: z.ZodType<A>;
  readonly parameters: Parameters;
  /** True if every answer takes past years: over the limit, the request is refused before anything is read for it. */
  readonly isAlwaysLong?: true;
}

type Answerer<A, Answer> = (asking: A, read: readonly ReadSeriesSet[], known: Known) => Promise<Answer>;

/** Answers a posted question: JSON, or a file with the question in the query. */
export async function answerPost<A extends AnyQuery, Answer>(
  service: Service,
  request: FastifyRequest,
  query: Record<string, unknown>,
  { body, asking: schema, parameters, isAlwaysLong }: EndpointDefinition<A>,
  answer: Answerer<A, Answer>,
): Promise<Answer> {
  if (isFile(request)) {
    const { asked, hints } = askedOfFile(schema, parameters, query);
    return inParameters(parameters, async () => {
      if (isAlwaysLong) request.askedBy().takePlace?.();
      const known = await knownOf(service, request, asked.where);
      const file = await readFileBody(request, hints, zoneAsked(asked, known));
      return answer(asked, readFile(file), known);
    });
  }
  askedByQuery(query, {});
  const { temperatures, ...asking } = read(body, request.body);
  if (isAlwaysLong) request.askedBy().takePlace?.();
  const known = await knownOf(service, request, asking.where);
  return answer(asking as unknown as A, readBody(temperatures, asking, known), known);
}

/** The subject of a link: a stored bed or place, by its id. */
export type Linked = { readonly bed: string } | { readonly place: string };

/**
 * Answers a question by link, under a tag of everything it depends on: the question, the stored data, and the date at
 * the place. A caller who has the answer gets 304 before anything is worked out.
 */
export async function answerLink<A extends AnyQuery>(
  service: Service,
  request: FastifyRequest,
  reply: FastifyReply,
  { asking: schema, parameters, isAlwaysLong }: Omit<EndpointDefinition<A>, 'body'>,
  linked: Linked,
  query: Record<string, unknown>,
  answer: Answerer<A, Written>,
): Promise<FastifyReply> {
  const sent = askedByQuery(query, parameters);
  const where = { ...(sent.where as object | undefined), ...linked };
  const asking = read(schema, { ...sent, where }, (path) => parameterAt(path, parameters));
  const now = service.clock();
  const owner = ownerOf(request);
  const rows = await linkedRows(service, owner, linked, now);
  const inputs = { query: request.query, ...bedInputsIn(rows), ...formOf(request) };
  return service.answers.send({ request, reply, owner }, inputs, () =>
    inParameters(parameters, async () => {
      if (isAlwaysLong) request.askedBy().takePlace?.();
      return answer(asking, [], { now, kept: await keptOf(service.store, owner, rows) });
    }),
  );
}

/** The stored data of the place or bed in the question, if it names one. */
async function knownOf(service: Service, request: FastifyRequest, where: ForecastQuery['where']): Promise<Known> {
  const now = service.clock();
  const owner = ownerOf(request);
  const linked =
    typeof where?.bed === 'string'
      ? { bed: where.bed }
      : typeof where?.place === 'string'
        ? { place: where.place }
        : undefined;
  if (!linked) return { now, kept: null };
  const rows = (await rowsOf(service, owner, linked, now)) ?? noneKept(linked);
  return { now, kept: await keptOf(service.store, owner, rows) };
}

/** The stored records that a link names. @throws {RequestError} `not-found`. */
export const linkedRows = async (service: Service, owner: string, linked: Linked, now: Date): Promise<PlaceRecords> =>
  (await rowsOf(service, owner, linked, now)) ?? noneKept(linked, 'not-found');

const rowsOf = ({ store }: Service, owner: string, linked: Linked, now: Date): Promise<PlaceRecords | undefined> =>
  'bed' in linked
    ? bedRows(store, owner, linked.bed, now.getTime())
    : placeRows(store, owner, linked.place, now.getTime());

const noneKept = (linked: Linked, code?: 'not-found'): never =>
  'bed' in linked ? noBed(linked.bed, code) : noPlace(linked.place, code);

function noBed(id: string, code: 'not-found' | 'unknown-bed' = 'unknown-bed'): never {
  throw new RequestError(
    code,
    code === 'not-found'
      ? keptRefusal('not-found.put-first', { kind: 'bed', id })
      : keptRefusal('unknown-bed.question', { id }),
    code === 'not-found' ? [] : [{ path: ['where', 'bed'], detail: keptRefusal('unknown-bed.field') }],
  );
}

function noPlace(id: string, code: 'not-found' | 'unknown-place' = 'unknown-place'): never {
  throw new RequestError(
    code,
    code === 'not-found'
      ? keptRefusal('not-found.put-first', { kind: 'place', id })
      : keptRefusal('unknown-place.question', { id }),
    code === 'not-found' ? [] : [{ path: ['where', 'place'], detail: keptRefusal('unknown-place.field') }],
  );
}
