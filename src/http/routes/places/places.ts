import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { RequestError } from '../../../basics/errors.js';
import { orAsKept } from '../../../contract/kept.js';
import {
  type PlaceWire,
  placeAnswerSchema,
  placeListSchema,
  placePatchSchema,
  placePutSchema,
} from '../../../contract/places.js';
import { keptRefusal } from '../../../contract/refusal-facts.js';
import type { Place, PlaceFields, Store } from '../../../garden/store/store.js';
import { ownerOf } from '../../auth/owner.js';
import { sendWithETag } from '../../negotiation/etag.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { changeProblems, keptProblems } from '../../problems/common-problems.js';
import { examplePlace } from '../../question/examples.js';
import { read } from '../../question/read.js';
import {
  asKept,
  asParameter,
  fieldsOf,
  idIn,
  isAskedAsKept,
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

const deleteQuery = z.strictObject({ with: z.enum(['beds']).optional() });

/** The places that a grower has, each with a climate of its own. */
export const placeRoutes = (store: Store, clock: () => Date): Route[] => {
  const keeper: Repository<Place, PlaceFields> = {
    find: store.place,
    put: store.putPlace,
    show: (place) => asKept(serializePlace(place)),
  };
  return [
    listRoute(
      {
        kind: 'place',
        summary: 'Your places, by id',
        schema: placeListSchema,
        list: store.places,
        onWire: serializePlace,
      },
      clock,
    ),
    {
      method: 'PUT',
      url: '/v1/places/:id',
      operation: {
        id: 'putPlace',
        summary: 'Keep a place, or replace it',
        json: {
          schema: placePutSchema,
          example: examplePlace,
          readOnly: readOnlyOf(placePutSchema, placeAnswerSchema),
        },
        answer: { schema: placeAnswerSchema, mayCreate: true },
        ifMatch: true,
        ifNoneMatch: true,
        problems: changeProblems,
      },
      handler(request, reply) {
        refuseQuery(request);
        const id = idIn(request, 'place');
        const fields = readPut(placePutSchema, placeAnswerSchema, request.body);
        return putAndAnswer(request, reply, id, keeper, () => fields, clock);
      },
    },
    {
      method: 'PATCH',
      url: '/v1/places/:id',
      operation: {
        id: 'changePlace',
        summary: 'Change some of what is kept of a place',
        json: { schema: placePatchSchema, example: { annualRainMm: 800 } },
        answer: { schema: placeAnswerSchema },
        ifMatch: true,
        problems: ['not-found', ...changeProblems],
      },
      handler(request, reply) {
        refuseQuery(request);
        const id = idIn(request, 'place');
        const changes = read(placePatchSchema, request.body);
        const changed = (before: Place | undefined): PlaceFields => {
          if (!before) throw resourceNotFound('place', id);
          return read(placePutSchema, { ...fieldsOf(placePutSchema, serializePlace(before)), ...changes });
        };
        return putAndAnswer(request, reply, id, keeper, changed, clock);
      },
    },
    {
      method: 'GET',
      url: '/v1/places/:id',
      operation: {
        id: 'getPlace',
        summary: 'One place',
        query: [asParameter],
        answer: { schema: orAsKept(placeAnswerSchema, placePutSchema) },
        problems: ['not-found', ...keptProblems],
      },
      async handler(request, reply) {
        const isAsKept = isAskedAsKept(request);
        const place = await placeIn(request, store);
        const content = serializePlace(place);
        if (isAsKept) return sendAsKept(request, reply, place.fieldsRevision, fieldsOf(placePutSchema, content));
        return sendWithETag(request, reply, content, () => signed(content, clock()));
      },
    },
    {
      method: 'DELETE',
      url: '/v1/places/:id',
      operation: {
        id: 'deletePlace',
        summary: 'Delete a place and its air; with=beds its beds and their readings too',
        query: [{ name: 'with', schema: z.enum(['beds']), description: 'Its beds go too.' }],
        answer: 'none',
        ifMatch: true,
        problems: ['not-found', 'has-beds', 'precondition-failed', ...keptProblems],
      },
      async handler(request, reply) {
        const asked = queryOf(deleteQuery, request);
        const id = idIn(request, 'place');
        const outcome = await deleteAsAllowed(request, id, keeper, (owner, ifRevision) =>
          store.deletePlace(owner, id, { withBeds: asked.with === 'beds', ifRevision }),
        );
        if (outcome === 'absent') throw resourceNotFound('place', id);
        if (outcome === 'has-beds') {
          throw new RequestError('has-beds', keptRefusal('has-beds', { place: id }));
        }
        return reply.code(204).send();
      },
    },
  ];
};

/** The place that a request's path names. @throws {RequestError} `not-found`. */
export async function placeIn(request: FastifyRequest, store: Store): Promise<Place> {
  const id = idIn(request, 'place');
  const place = await store.place(ownerOf(request), id);
  if (!place) throw resourceNotFound('place', id);
  return place;
}

const serializePlace = ({ revision: _, fieldsRevision, id, ...fields }: Place): PlaceWire => ({
  id,
  revision: fieldsRevision,
  ...fields,
});

/** What belongs to a place and is not kept yet. */
export const nothingYet = (id: string, what: string): RequestError =>
  new RequestError('not-found', keptRefusal('not-found.of-place', { what, place: id }));
