import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { RequestError } from '../../../basics/errors.js';
import { type BedWire, bedAnswerSchema, bedListSchema, bedPatchSchema, bedPutSchema } from '../../../contract/beds.js';
import { orAsKept } from '../../../contract/kept.js';
import { keptRefusal } from '../../../contract/refusal-facts.js';
import type { Bed, BedFields, Store } from '../../../garden/store/store.js';
import { ownerOf } from '../../auth/owner.js';
import { sendWithETag, tagOf } from '../../negotiation/etag.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { changeProblems, keptProblems } from '../../problems/common-problems.js';
import { exampleBed } from '../../question/examples.js';
import { read } from '../../question/read.js';
import {
  asKept,
  asParameter,
  fieldsOf,
  idIn,
  isAskedAsKept,
  noSuch,
  putAndAnswer,
  queryOf,
  type Repository,
  readOnlyOf,
  readPut,
  refuseQuery,
  resourceNotFound,
  sendAsKept,
} from '../../resource/resource.js';
import { deleteAsAllowed, listRoute } from '../../resource/resource-routes.js';

const deleteQuery = z.strictObject({ with: z.enum(['sowings']).optional() });

/** The beds that a grower has. */
export const bedRoutes = (store: Store, clock: () => Date, publicUrl = ''): Route[] => {
  const bedOnWire = serializeBed(publicUrl);
  const keeper: Repository<Bed, BedFields> = {
    find: store.bed,
    async put(owner, id, fields, ifRevision) {
      const done = await store.putBed(owner, id, fields, ifRevision);
      if (done.outcome === 'no-place') throw noSuch('place', fields.place);
      return done;
    },
    show: (bed) => asKept(bedOnWire(bed)),
  };
  return [
    listRoute(
      { kind: 'bed', summary: 'Your beds, by id', schema: bedListSchema, list: store.beds, onWire: bedOnWire },
      clock,
    ),
    {
      method: 'PUT',
      url: '/v1/beds/:id',
      operation: {
        id: 'putBed',
        summary: 'Keep a bed, or replace it; what lies in it stays',
        json: { schema: bedPutSchema, example: exampleBed, readOnly: readOnlyOf(bedPutSchema, bedAnswerSchema) },
        answer: { schema: bedAnswerSchema, mayCreate: true },
        ifMatch: true,
        ifNoneMatch: true,
        problems: ['unknown-place', ...changeProblems],
      },
      handler(request, reply) {
        refuseQuery(request);
        const id = idIn(request, 'bed');
        const fields = readPut(bedPutSchema, bedAnswerSchema, request.body);
        return putAndAnswer(request, reply, id, keeper, () => fields, clock);
      },
    },
    {
      method: 'PATCH',
      url: '/v1/beds/:id',
      operation: {
        id: 'changeBed',
        summary: 'Change some of what is kept of a bed',
        json: { schema: bedPatchSchema, example: { cover: 'mulch', shadePercent: 20 } },
        answer: { schema: bedAnswerSchema },
        ifMatch: true,
        problems: ['not-found', 'unknown-place', ...changeProblems],
      },
      handler(request, reply) {
        refuseQuery(request);
        const id = idIn(request, 'bed');
        const changes = read(bedPatchSchema, request.body);
        const changed = (before: Bed | undefined): BedFields => {
          if (!before) throw resourceNotFound('bed', id);
          return read(bedPutSchema, { ...fieldsOf(bedPutSchema, bedOnWire(before)), ...changes });
        };
        return putAndAnswer(request, reply, id, keeper, changed, clock);
      },
    },
    {
      method: 'GET',
      url: '/v1/beds/:id',
      operation: {
        id: 'getBed',
        summary: 'One bed',
        query: [asParameter],
        answer: { schema: orAsKept(bedAnswerSchema, bedPutSchema) },
        problems: ['not-found', ...keptProblems],
      },
      async handler(request, reply) {
        const isAsKept = isAskedAsKept(request);
        const bed = await bedIn(request, store);
        const content = bedOnWire(bed);
        if (isAsKept) return sendAsKept(request, reply, bed.fieldsRevision, fieldsOf(bedPutSchema, content));
        return sendWithETag(request, reply, content, () => signed(content, clock()));
      },
    },
    {
      method: 'DELETE',
      url: '/v1/beds/:id',
      operation: {
        id: 'deleteBed',
        summary: 'Delete a bed, its readings and plans; with=sowings its sowings and their counts too',
        query: [{ name: 'with', schema: z.enum(['sowings']), description: 'Its sowings go too.' }],
        answer: 'none',
        ifMatch: true,
        problems: ['not-found', 'has-sowings', 'precondition-failed', ...keptProblems],
      },
      async handler(request, reply) {
        const asked = queryOf(deleteQuery, request);
        const id = idIn(request, 'bed');
        const outcome = await deleteAsAllowed(request, id, keeper, (owner, ifRevision) =>
          store.deleteBed(owner, id, { withSowings: asked.with === 'sowings', ifRevision }),
        );
        if (outcome === 'absent') throw resourceNotFound('bed', id);
        if (outcome === 'has-sowings') {
          throw new RequestError('has-sowings', keptRefusal('has-sowings', { bed: id }));
        }
        return reply.code(204).send();
      },
    },
    {
      method: 'POST',
      url: '/v1/beds/:id/calendar-token',
      operation: {
        id: 'renewCalendarToken',
        summary: "Give a bed's calendar a new address; the old one opens nothing any more",
        answer: { schema: bedAnswerSchema },
        problems: ['not-found', ...keptProblems],
      },
      async handler(request, reply) {
        refuseQuery(request);
        await store.renewCalendarToken(ownerOf(request), idIn(request, 'bed'));
        const content = bedOnWire(await bedIn(request, store));
        return reply.header('etag', tagOf(content)).send(signed(content, clock()));
      },
    },
  ];
};

/** The bed that a request's path names. @throws {RequestError} `not-found`. */
export async function bedIn(request: FastifyRequest, store: Store): Promise<Bed> {
  const id = idIn(request, 'bed');
  const bed = await store.bed(ownerOf(request), id);
  if (!bed) throw resourceNotFound('bed', id);
  return bed;
}

/** @param publicUrl What the address of a calendar begins with; '': nothing, it is one of this service. */
const serializeBed =
  (publicUrl: string) =>
  ({ revision: _, fieldsRevision, id, calendarToken, ...fields }: Bed): BedWire => ({
    id,
    revision: fieldsRevision,
    ...fields,
    calendarUrl: calendarToken && `${publicUrl}/v1/beds/${id}/calendar.ics?token=${calendarToken}`,
  });
