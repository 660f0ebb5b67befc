import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { RequestError } from '../../basics/errors.js';
import type { Bed, BedFields, Store } from '../../garden/store.js';
import { sendWithETag, tagOf } from '../etag.js';
import { exampleBed } from '../examples.js';
import { asKept, idIn, type Keeper, noSuch, notKept, putAndAnswer, queryOf, refuseQuery } from '../kept.js';
import { listRoute } from '../kept-routes.js';
import { signed } from '../model.js';
import { ownerOf } from '../owner.js';
import { read } from '../read.js';
import type { Route } from '../route.js';
import { type BedWire, bedAnswerSchema, bedListSchema, bedPatchSchema, bedPutSchema } from '../schemas/beds.js';
import { changeProblems, keptProblems } from '../usual-problems.js';

const deleteQuery = z.strictObject({ with: z.enum(['sowings']).optional() });

/** The beds that a grower has. */
export const bedRoutes = (store: Store, clock: () => Date, publicUrl = ''): Route[] => {
  const bedOnWire = bedsOnWire(publicUrl);
  const keeper: Keeper<Bed, BedFields> = {
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
        json: { schema: bedPutSchema, example: exampleBed },
        answer: { schema: bedAnswerSchema, mayCreate: true },
        ifMatch: true,
        problems: ['unknown-place', ...changeProblems],
      },
      handler(request, reply) {
        refuseQuery(request);
        const id = idIn(request, 'bed');
        const fields = read(bedPutSchema, request.body);
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
          if (!before) throw notKept('bed', id);
          const { id: _, calendarUrl: __, ...fields } = bedOnWire(before);
          return read(bedPutSchema, { ...fields, ...changes });
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
        answer: { schema: bedAnswerSchema },
        problems: ['not-found', ...keptProblems],
      },
      async handler(request, reply) {
        refuseQuery(request);
        const content = bedOnWire(await bedIn(request, store));
        return sendWithETag(request, reply, content, () => signed(content, clock()));
      },
    },
    {
      method: 'DELETE',
      url: '/v1/beds/:id',
      operation: {
        id: 'deleteBed',
        summary: 'Forget a bed, its readings and plans; with=sowings its sowings and their counts too',
        query: [{ name: 'with', schema: z.enum(['sowings']), description: 'Its sowings go too.' }],
        answer: 'none',
        problems: ['not-found', 'has-sowings', ...keptProblems],
      },
      async handler(request, reply) {
        const asked = queryOf(deleteQuery, request);
        const id = idIn(request, 'bed');
        const outcome = await store.deleteBed(ownerOf(request), id, { withSowings: asked.with === 'sowings' });
        if (outcome === 'absent') throw notKept('bed', id);
        if (outcome === 'has-sowings') {
          throw new RequestError(
            'has-sowings',
            `"${id}" has sowings, so it stays, and nothing was deleted. Move or delete them first, or send ?with=sowings to delete them and their counts too.`,
          );
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
  if (!bed) throw notKept('bed', id);
  return bed;
}

/** @param publicUrl What the address of a calendar begins with; '': nothing, it is one of this service. */
const bedsOnWire =
  (publicUrl: string) =>
  ({ revision: _, id, calendarToken, ...fields }: Bed): BedWire => ({
    id,
    ...fields,
    calendarUrl: calendarToken && `${publicUrl}/v1/beds/${id}/calendar.ics?token=${calendarToken}`,
  });
