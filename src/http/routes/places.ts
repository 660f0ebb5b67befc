import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { RequestError } from '../../basics/errors.js';
import type { Place, PlaceFields, Store } from '../../garden/store.js';
import { sendWithETag } from '../etag.js';
import { examplePlace } from '../examples.js';
import { asKept, idIn, type Keeper, notKept, putAndAnswer, queryOf, refuseQuery } from '../kept.js';
import { listRoute } from '../kept-routes.js';
import { signed } from '../model.js';
import { ownerOf } from '../owner.js';
import { read } from '../read.js';
import type { Route } from '../route.js';
import {
  type PlaceWire,
  placeAnswerSchema,
  placeListSchema,
  placePatchSchema,
  placePutSchema,
} from '../schemas/places.js';
import { changeProblems, keptProblems } from '../usual-problems.js';

const deleteQuery = z.strictObject({ with: z.enum(['beds']).optional() });

/** The places that a grower has, each with a climate of its own. */
export const placeRoutes = (store: Store, clock: () => Date): Route[] => {
  const keeper: Keeper<Place, PlaceFields> = {
    find: store.place,
    put: store.putPlace,
    show: (place) => asKept(placeOnWire(place)),
  };
  return [
    listRoute(
      {
        kind: 'place',
        summary: 'Your places, by id',
        schema: placeListSchema,
        list: store.places,
        onWire: placeOnWire,
      },
      clock,
    ),
    {
      method: 'PUT',
      url: '/v1/places/:id',
      operation: {
        id: 'putPlace',
        summary: 'Keep a place, or replace it',
        json: { schema: placePutSchema, example: examplePlace },
        answer: { schema: placeAnswerSchema, mayCreate: true },
        ifMatch: true,
        problems: changeProblems,
      },
      handler(request, reply) {
        refuseQuery(request);
        const id = idIn(request, 'place');
        const fields = read(placePutSchema, request.body);
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
          if (!before) throw notKept('place', id);
          const { id: _, ...fields } = placeOnWire(before);
          return read(placePutSchema, { ...fields, ...changes });
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
        answer: { schema: placeAnswerSchema },
        problems: ['not-found', ...keptProblems],
      },
      async handler(request, reply) {
        refuseQuery(request);
        const content = placeOnWire(await placeIn(request, store));
        return sendWithETag(request, reply, content, () => signed(content, clock()));
      },
    },
    {
      method: 'DELETE',
      url: '/v1/places/:id',
      operation: {
        id: 'deletePlace',
        summary: 'Forget a place and its air; with=beds its beds and their readings too',
        query: [{ name: 'with', schema: z.enum(['beds']), description: 'Its beds go too.' }],
        answer: 'none',
        problems: ['not-found', 'has-beds', ...keptProblems],
      },
      async handler(request, reply) {
        const asked = queryOf(deleteQuery, request);
        const id = idIn(request, 'place');
        const outcome = await store.deletePlace(ownerOf(request), id, { withBeds: asked.with === 'beds' });
        if (outcome === 'absent') throw notKept('place', id);
        if (outcome === 'has-beds') {
          throw new RequestError(
            'has-beds',
            `"${id}" has beds, so it stays, and nothing was deleted. Move or delete them first, or send ?with=beds to delete them and their readings too.`,
          );
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
  if (!place) throw notKept('place', id);
  return place;
}

const placeOnWire = ({ revision: _, id, ...fields }: Place): PlaceWire => ({ id, ...fields });
