import type { FastifyReply, FastifyRequest } from 'fastify';
import type { z } from 'zod';
import { MIN_YEARS } from '../../answers/ahead/past-soil.js';
import type { TableClimate } from '../../answers/climate/table-climate.js';
import { answerRefusal } from '../../answers/refusal-facts.js';
import { dateAt } from '../../basics/calendar.js';
import { notUnderstood, RequestError } from '../../basics/errors.js';
import { fieldFact } from '../../basics/field-facts.js';
import { type ForecastBody, type ForecastQuery, questionShape } from '../../contract/forecast.js';
import { keptRefusal } from '../../contract/request/refusal-facts.js';
import { type BedInputs, inputsOfRows } from '../../garden/bed/bed-inputs.js';
import { bedInputsIn, bedRows, type PlaceRecords, placeRows } from '../../garden/bed/bed-records.js';
import { namingSources } from '../../garden/bed/naming-sources.js';
import type { Store } from '../../garden/store/store.js';
import type { Localities } from '../../localities/open-localities.js';
import type { WorkerPool } from '../../worker/worker-pool.js';
import { ownerOf } from '../auth/owner.js';
import type { AnswerCache } from '../negotiation/answer-cache.js';
import { formOf } from '../negotiation/picture.js';
import type { Written } from '../negotiation/written.js';
import { askedByQuery, localeParameters, type Parameters, parameterAt } from './csv-query.js';
import { readFileBody } from './file-body.js';
import { askedOfFile, inParameters, isFile } from './file-request.js';
import { type Locale, localeOf } from './locale.js';
import { type Known, type ReadSeriesSet, readBody, readFile, zoneOfQuestion } from './question.js';
import { read } from './read.js';

/** Everything that the routes need beside the request. */
export interface Service {
  readonly clock: () => Date;
  readonly store: Store;
  readonly work: WorkerPool;
  readonly answers: AnswerCache;
  readonly localities: () => Promise<Localities>;
}

/** A question about a bed, by body, file or link. */
type AnyQuery = Pick<ForecastQuery, 'where'> & {
  readonly crop?: ForecastQuery['crop'] | undefined;
  readonly beyond?: ForecastQuery['beyond'];
  readonly climate?: ForecastQuery['climate'];
};

/** One kind of question: its body, and its query parameters beside a file. */
export interface EndpointDefinition<A extends AnyQuery> {
  readonly body: z.ZodType<A & { temperatures: ForecastBody['temperatures'] }>;
  readonly asking: z.ZodType<A>;
  readonly parameters: Parameters;
  /** True where the climate table may answer beside temperatures that were sent; else only without any, or if asked for. */
  readonly usesTable?: boolean;
  /** True if every answer takes past years: over the limit, the request is refused before anything is read for it. */
  readonly isAlwaysLong?: true;
}

type Answerer<A, Answer> = (asking: A, read: readonly ReadSeriesSet[], known: Known) => Promise<Answer>;

/** Answers a posted question: JSON, or a file with the question in the query. */
export async function answerPost<A extends AnyQuery, Answer>(
  service: Service,
  request: FastifyRequest,
  query: Record<string, unknown>,
  { body, asking: schema, parameters, isAlwaysLong, usesTable = false }: EndpointDefinition<A>,
  answer: Answerer<A, Answer>,
): Promise<Answer> {
  if (isFile(request)) {
    const { asked, hints } = askedOfFile(schema, parameters, query);
    return inParameters(parameters, async () => {
      if (isAlwaysLong) request.askedBy().takePlace?.();
      const known = await knownOf(service, request, asked, usesTable, true);
      const file = await readFileBody(request, hints, zoneOfQuestion(asked, known));
      return namingSources(known.kept, () => answer(asked, readFile(file), known));
    });
  }
  askedByQuery(query, {});
  const { temperatures, ...asking } = read(body, request.body);
  if (isAlwaysLong) request.askedBy().takePlace?.();
  const known = await knownOf(
    service,
    request,
    asking as AnyQuery,
    usesTable || temperatures.length === 0,
    temperatures.length > 0,
  );
  const sent = readBody(temperatures, asking, known);
  return namingSources(known.kept, () => answer(asking as unknown as A, sent, known));
}

/** The stored bed or place that a question names; undefined: none. */
const linkedIn = (where: ForecastQuery['where']): Linked | undefined => {
  if (typeof where?.bed === 'string') return { bed: where.bed };
  return typeof where?.place === 'string' ? { place: where.place } : undefined;
};

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
  named: Linked | null,
  query: Record<string, unknown>,
  answer: Answerer<A, Written>,
): Promise<FastifyReply> {
  const sent = askedByQuery(query, parameters);
  const where = named ? { ...(sent.where as object | undefined), ...named } : sent.where;
  const asking = read(schema, { ...sent, where }, (path) => parameterAt(path, parameters));
  const linked = linkedIn(asking.where);
  const now = service.clock();
  const owner = ownerOf(request);
  if (!linked)
    return answerLocale(service, request, reply, { asking, parameters, isLong: isAlwaysLong ?? false }, now, answer);
  const rows = await linkedRows(service, owner, linked, now);
  const inputs = { query: request.query, ...bedInputsIn(rows), ...formOf(request) };
  return service.answers.send({ request, reply, owner }, inputs, () =>
    inParameters(parameters, async () => {
      if (isAlwaysLong) request.askedBy().takePlace?.();
      const kept = withClimate(await inputsOfRows(service.store, owner, rows), (asking as AnyQuery).climate);
      return namingSources(kept, () => answer(asking, [], { now, kept }));
    }),
  );
}

/** Answers a link about a town or coordinates, under a tag of the question and the date there. */
async function answerLocale<A extends AnyQuery>(
  service: Service,
  request: FastifyRequest,
  reply: FastifyReply,
  { asking, parameters, isLong }: { readonly asking: A; readonly parameters: Parameters; readonly isLong: boolean },
  now: Date,
  answer: Answerer<A, Written>,
): Promise<FastifyReply> {
  const known = await inParameters(parameters, () => knownOf(service, request, asking, true, false));
  if (!known.locale) {
    throw notUnderstood([{ parameter: 'near', detail: fieldFact('field.place-or-bed-needed') }]);
  }
  const today = dateAt(now.getTime(), known.locale.site.zone);
  const inputs = { query: request.query, today, ...formOf(request) };
  return service.answers.send({ request, reply, owner: ownerOf(request) }, inputs, () =>
    inParameters(parameters, async () => {
      if (isLong) request.askedBy().takePlace?.();
      return answer(asking, [], known);
    }),
  );
}

/**
 * What is known of a place that the parameters of a link describe.
 *
 * @throws {RequestError} `not-understood` where they do not say where it is, and as `localeOf` does.
 */
export async function knownByQuery(
  service: Service,
  request: FastifyRequest,
  query: Record<string, unknown>,
): Promise<Known & { readonly locale: Locale & { readonly climate: TableClimate } }> {
  const where = read(
    questionShape.where,
    (askedByQuery(query, localeParameters).where as object | undefined) ?? undefined,
    (path) => parameterAt(['where', ...path], localeParameters),
  );
  const { locale, ...known } = await inParameters(localeParameters, () =>
    knownOf(service, request, { where }, true, false),
  );
  if (!locale) throw notUnderstood([{ parameter: 'near', detail: fieldFact('field.place-or-bed-needed') }]);
  const { climate } = locale;
  if (!climate) throw new RequestError('no-past-years', answerRefusal('no-past-years.beyond', { minYears: MIN_YEARS }));
  return { ...known, locale: { ...locale, climate } };
}

/** The stored data of the place or bed in the question, if it names one. */
export async function knownOf(
  service: Service,
  request: FastifyRequest,
  { where, beyond, climate = 'any' }: AnyQuery,
  mayUseTable: boolean,
  /** Whether temperatures were sent. */
  hasOwn: boolean,
): Promise<Known> {
  const now = service.clock();
  const owner = ownerOf(request);
  const linked = linkedIn(where);
  if (!linked) {
    const isIndoors = typeof where?.bed === 'object' && where.bed.kind === 'indoors';
    const use = hasOwn || isIndoors ? 'wanted' : 'needed';
    const isUnused = climate === 'own' || !(mayUseTable || beyond === 'climate-table');
    const place = typeof where?.place === 'object' ? where.place : undefined;
    const sources = { localities: service.localities, climateOf: service.store.climateOf };
    return { now, kept: null, locale: await localeOf(sources, place, NEAR, { now, table: isUnused ? 'unused' : use }) };
  }
  const rows = (await rowsOf(service, owner, linked, now)) ?? noneKept(linked);
  return { now, kept: withClimate(await inputsOfRows(service.store, owner, rows), climate) };
}

const NEAR = { path: ['where', 'place', 'near'] };

/** The stored records that a link names. @throws {RequestError} `not-found`. */
export const linkedRows = async (service: Service, owner: string, linked: Linked, now: Date): Promise<PlaceRecords> =>
  (await rowsOf(service, owner, linked, now)) ?? noneKept(linked, 'not-found');

const rowsOf = ({ store }: Service, owner: string, linked: Linked, now: Date): Promise<PlaceRecords | undefined> =>
  'bed' in linked
    ? bedRows(store, owner, linked.bed, now.getTime())
    : placeRows(store, owner, linked.place, now.getTime());

/** What is kept, without the climate table where the question leaves it out. */
const withClimate = (kept: BedInputs, climate: AnyQuery['climate']): BedInputs =>
  climate === 'own' && kept.climate ? { ...kept, normals: null, typicalAir: null, climate: null } : kept;

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
