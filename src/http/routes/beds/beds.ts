import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { RequestError } from '../../../basics/errors.js';
import { type BedWire, bedAnswerSchema, bedListSchema, bedPatchSchema, bedPutSchema } from '../../../contract/beds.js';
import { keptRefusal } from '../../../contract/request/refusal-facts.js';
import type { Bed, BedFields, Store } from '../../../garden/store/store.js';
import { ownerOf } from '../../auth/owner.js';
import { tagOf } from '../../negotiation/etag.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { keptProblems } from '../../problems/common-problems.js';
import { exampleBed } from '../../question/examples.js';
import { patchRoute, putRoute } from '../../resource/change-routes.js';
import {
  asKept,
  idIn,
  keptIn,
  noSuch,
  queryOf,
  type Repository,
  refuseQuery,
  resourceNotFound,
} from '../../resource/resource.js';
import { deleteAsAllowed, getRoute, listRoute } from '../../resource/resource-routes.js';

const deleteQuery = z.strictObject({ with: z.enum(['sowings']).optional() });
const bedSchemas = { kind: 'bed', put: bedPutSchema, answer: bedAnswerSchema, problems: ['unknown-place'] } as const;

/** The routes of beds. */
export const bedRoutes = (store: Store, clock: () => Date, publicUrl = ''): Route[] => {
  const onWire = serializeBed(publicUrl);
  const beds: Repository<Bed, BedFields> = {
    find: store.bed,
    async put(owner, id, fields, ifRevision) {
      const done = await store.putBed(owner, id, fields, ifRevision);
      if (done.outcome === 'no-place') throw noSuch('place', fields.place);
      return done;
    },
    show: (bed) => asKept(onWire(bed)),
  };
  const list = { kind: 'bed', summary: 'Your beds, by id', schema: bedListSchema, list: store.beds } as const;
  const put = {
    ...bedSchemas,
    summary: 'Store or replace a bed; its contents stay',
    example: exampleBed,
  };
  const patch = {
    ...bedSchemas,
    summary: 'Change some fields of a bed',
    patch: bedPatchSchema,
    example: { cover: 'mulch', shadePercent: 20 },
    onWire,
  };
  return [
    listRoute({ ...list, onWire }, clock),
    putRoute(put, beds, clock),
    patchRoute(patch, beds, clock),
    getRoute({ ...bedSchemas, summary: 'One bed', onWire }, beds, clock),
    deleteBed(beds, store),
    renewCalendarToken(store, onWire, clock),
  ];
};

const deleteBed = (beds: Repository<Bed, BedFields>, store: Store): Route => ({
  method: 'DELETE',
  url: '/v1/beds/:id',
  operation: {
    id: 'deleteBed',
    summary: 'Delete a bed, its readings and plans; with=sowings also its sowings and their counts',
    query: [{ name: 'with', schema: z.enum(['sowings']), description: 'Also delete its sowings.' }],
    answer: 'none',
    ifMatch: true,
    problems: ['not-found', 'has-sowings', 'precondition-failed', ...keptProblems],
  },
  async handler(request, reply) {
    const asked = queryOf(deleteQuery, request);
    const id = idIn(request, 'bed');
    const outcome = await deleteAsAllowed(request, id, beds, (owner, ifRevision) =>
      store.deleteBed(owner, id, { withSowings: asked.with === 'sowings', ifRevision }),
    );
    if (outcome === 'absent') throw resourceNotFound('bed', id);
    if (outcome === 'has-sowings') throw new RequestError('has-sowings', keptRefusal('has-sowings', { bed: id }));
    return reply.code(204).send();
  },
});

const renewCalendarToken = (store: Store, onWire: (bed: Bed) => BedWire, clock: () => Date): Route => ({
  method: 'POST',
  url: '/v1/beds/:id/calendar-token',
  operation: {
    id: 'renewCalendarToken',
    summary: "Give a bed's calendar a new address; the old one stops working",
    answer: { schema: bedAnswerSchema },
    problems: ['not-found', ...keptProblems],
  },
  async handler(request, reply) {
    refuseQuery(request);
    await store.renewCalendarToken(ownerOf(request), idIn(request, 'bed'));
    const content = onWire(await bedIn(request, store));
    return reply.header('etag', tagOf(content)).send(signed(content, clock()));
  },
});

/** The bed in a request's path. @throws {RequestError} `not-found`. */
export const bedIn = (request: FastifyRequest, store: Store): Promise<Bed> => keptIn(request, 'bed', store.bed);

/** @param publicUrl Prefix of a calendar's address; '': none, it is a path of this service. */
const serializeBed =
  (publicUrl: string) =>
  ({ revision: _, fieldsRevision, id, calendarToken, ...fields }: Bed): BedWire => ({
    id,
    revision: fieldsRevision,
    ...fields,
    calendarUrl: calendarToken && `${publicUrl}/v1/beds/${id}/calendar.ics?token=${calendarToken}`,
  });
