import type { FastifyRequest } from 'fastify';
import { addDays, dateAt, findDate, type PlainDate, zoneNamed } from '../../../basics/calendar.js';
import { type Fault, notUnderstood, RequestError } from '../../../basics/errors.js';
import { fieldFact } from '../../../basics/field-facts.js';
import { orAsKept } from '../../../contract/kept.js';
import { keptRefusal } from '../../../contract/request/refusal-facts.js';
import { countAnswerSchema, countPutSchema } from '../../../contract/sowings.js';
import type { Count, KeptCount, Sowing } from '../../../garden/store/season-store.js';
import type { Store } from '../../../garden/store/store.js';
import { MAX_COUNT_DAYS } from '../../../germination/run/count-day.js';
import { ownerOf } from '../../auth/owner.js';
import { sendWithETag, tagOf } from '../../negotiation/etag.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { changeProblems, keptProblems } from '../../problems/common-problems.js';
import { exampleCount } from '../../question/examples.js';
import {
  asParameter,
  type Current,
  changeAsAllowed,
  fieldsOf,
  isAskedAsKept,
  readOnlyOf,
  readPut,
  refuseQuery,
  resourceNotFound,
  sendAsKept,
} from '../../resource/resource.js';
import { countedIn } from './sowings.js';

/** The routes of a sowing's counts. */
export const countRoutes = (store: Store, clock: () => Date): Route[] => [
  putCount(store, clock),
  getCount(store, clock),
  deleteCount(store),
];

const putCount = (store: Store, clock: () => Date): Route => ({
  method: 'PUT',
  url: '/v1/sowings/:id/counts/:date',
  operation: {
    id: 'putCount',
    summary: 'Store the count of a date; it replaces an earlier one',
    json: { schema: countPutSchema, example: exampleCount, readOnly: readOnlyOf(countPutSchema, countAnswerSchema) },
    answer: { schema: countAnswerSchema, mayCreate: true },
    ifMatch: true,
    ifNoneMatch: true,
    problems: ['not-found', ...changeProblems],
  },
  async handler(request, reply) {
    refuseQuery(request);
    const owner = ownerOf(request);
    const { sowing } = await countedIn(request, store);
    const date = dateIn(request) ?? refuseDate();
    const count: Count = { date, ...readPut(countPutSchema, countAnswerSchema, request.body) };
    const bed = await store.bed(owner, sowing.bed);
    const place = bed && (await store.place(owner, bed.place));
    if (!place) throw resourceNotFound('sowing', sowing.id);
    refuseCount(sowing, count, dateAt(clock().getTime(), zoneNamed(place.timeZone)));
    const done = await changeAsAllowed(
      request,
      async () => currentOf(await countIn(request, store)),
      async (ifRevision) => {
        const put = await store.putCount(owner, sowing.id, count, ifRevision);
        return put?.outcome === 'stale' ? put.outcome : put;
      },
    );
    if (!done) throw resourceNotFound('sowing', sowing.id);
    return reply
      .code(done.outcome === 'created' ? 201 : 200)
      .header('etag', tagOf(done.kept))
      .send(signed(done.kept, clock()));
  },
});

const getCount = (store: Store, clock: () => Date): Route => ({
  method: 'GET',
  url: '/v1/sowings/:id/counts/:date',
  operation: {
    id: 'getCount',
    summary: 'The count of a date',
    query: [asParameter],
    answer: { schema: orAsKept(countAnswerSchema, countPutSchema) },
    problems: ['not-found', ...keptProblems],
  },
  async handler(request, reply) {
    const isAsKept = isAskedAsKept(request);
    const count = await countIn(request, store);
    if (!count) throw noCount(request);
    if (isAsKept) return sendAsKept(request, reply, count.revision, fieldsOf(countPutSchema, count));
    return sendWithETag(request, reply, count, () => signed(count, clock()));
  },
});

const deleteCount = (store: Store): Route => ({
  method: 'DELETE',
  url: '/v1/sowings/:id/counts/:date',
  operation: {
    id: 'deleteCount',
    summary: 'Delete the count of a date',
    answer: 'none',
    ifMatch: true,
    problems: ['not-found', 'precondition-failed', ...keptProblems],
  },
  async handler(request, reply) {
    refuseQuery(request);
    const { sowing } = await countedIn(request, store);
    const date = dateIn(request);
    if (date === undefined) throw noCount(request);
    const outcome = await changeAsAllowed(
      request,
      async () => currentOf(await countIn(request, store)),
      (ifRevision) => store.deleteCount(ownerOf(request), sowing.id, date, ifRevision),
    );
    if (outcome !== 'deleted') throw noCount(request);
    return reply.code(204).send();
  },
});

/** The date in the path; undefined if invalid. */
const dateIn = (request: FastifyRequest): PlainDate | undefined => findDate((request.params as { date: string }).date);

/**
 * The count in a request's path; undefined: there is none. @throws {RequestError} `not-found` for an unknown sowing.
 */
async function countIn(request: FastifyRequest, store: Store): Promise<KeptCount | undefined> {
  const { counts } = await countedIn(request, store);
  return counts.find(({ date }) => date === dateIn(request));
}

const currentOf = (count: KeptCount | undefined): Current =>
  count ? { revision: count.revision, inputs: () => count } : { revision: null };

function noCount(request: FastifyRequest): RequestError {
  const { id } = request.params as { id: string };
  return new RequestError('not-found', keptRefusal('not-found.count', { id }));
}

function refuseDate(): never {
  throw notUnderstood([{ parameter: 'date', detail: fieldFact('field.path-date') }]);
}

/** Refuses an impossible count. @throws {RequestError} `not-understood`. */
function refuseCount(sowing: Sowing, { date, seedlings, ofSeeds, thinned }: Count, today: PlainDate): void {
  const faults: Fault[] = [];
  if (date < sowing.date)
    faults.push({ parameter: 'date', detail: fieldFact('field.before-sowing', { sowingDate: sowing.date }) });
  const last = addDays(sowing.date, MAX_COUNT_DAYS);
  if (date > last) {
    faults.push({
      parameter: 'date',
      detail: fieldFact('field.long-after-sowing', { maxDays: MAX_COUNT_DAYS, by: last }),
    });
  }
  if (date > today) faults.push({ parameter: 'date', detail: fieldFact('field.day-to-come', { todaysDate: today }) });
  const of = ofSeeds ?? sowing.seeds;
  const all = seedlings + (typeof thinned === 'number' ? thinned : 0);
  if (of === null && all > 0) {
    faults.push({
      path: ['ofSeeds'],
      detail: fieldFact('field.of-seeds-needed'),
    });
  }
  if (of !== null && all > of) {
    faults.push({
      path: ['seedlings'],
      detail: fieldFact('field.many-seedlings', { seeds: of, counted: all }),
    });
  }
  if (faults.length > 0) throw notUnderstood(faults);
}
