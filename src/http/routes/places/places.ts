import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { RequestError } from '../../../basics/errors.js';
import {
  type PlaceWire,
  placeAnswerSchema,
  placeListSchema,
  placePatchSchema,
  placePutSchema,
} from '../../../contract/places.js';
import { keptRefusal } from '../../../contract/request/refusal-facts.js';
import type { Place, PlaceFields, Store } from '../../../garden/store/store.js';
import type { Route } from '../../openapi/route.js';
import { keptProblems } from '../../problems/common-problems.js';
import { examplePlace } from '../../question/examples.js';
import { patchRoute, putRoute } from '../../resource/change-routes.js';
import { asKept, idIn, keptIn, queryOf, type Repository, resourceNotFound } from '../../resource/resource.js';
import { deleteAsAllowed, getRoute, listRoute } from '../../resource/resource-routes.js';

const deleteQuery = z.strictObject({ with: z.enum(['beds']).optional() });
const placeSchemas = { kind: 'place', put: placePutSchema, answer: placeAnswerSchema } as const;

/** The routes of places, each with a climate of its own. */
export const placeRoutes = (store: Store, clock: () => Date): Route[] => {
  const places: Repository<Place, PlaceFields> = {
    find: store.place,
    put: store.putPlace,
    show: (place) => asKept(serializePlace(place)),
  };
  const onWire = serializePlace;
  const list = { kind: 'place', summary: 'Your places, by id', schema: placeListSchema, list: store.places } as const;
  const put = { ...placeSchemas, summary: 'Store or replace a place', example: examplePlace };
  const patch = {
    ...placeSchemas,
    summary: 'Change some fields of a place',
    patch: placePatchSchema,
    example: { annualRainMm: 800 },
    onWire,
  };
  return [
    listRoute({ ...list, onWire }, clock),
    putRoute(put, places, clock),
    patchRoute(patch, places, clock),
    getRoute({ ...placeSchemas, summary: 'One place', onWire }, places, clock),
    deletePlace(places, store),
  ];
};

const deletePlace = (places: Repository<Place, PlaceFields>, store: Store): Route => ({
  method: 'DELETE',
  url: '/v1/places/:id',
  operation: {
    id: 'deletePlace',
    summary: 'Delete a place and its air; with=beds also its beds and their readings',
    query: [{ name: 'with', schema: z.enum(['beds']), description: 'Also delete its beds.' }],
    answer: 'none',
    ifMatch: true,
    problems: ['not-found', 'has-beds', 'precondition-failed', ...keptProblems],
  },
  async handler(request, reply) {
    const asked = queryOf(deleteQuery, request);
    const id = idIn(request, 'place');
    const outcome = await deleteAsAllowed(request, id, places, (owner, ifRevision) =>
      store.deletePlace(owner, id, { withBeds: asked.with === 'beds', ifRevision }),
    );
    if (outcome === 'absent') throw resourceNotFound('place', id);
    if (outcome === 'has-beds') throw new RequestError('has-beds', keptRefusal('has-beds', { place: id }));
    return reply.code(204).send();
  },
});

/** The place in a request's path. @throws {RequestError} `not-found`. */
export const placeIn = (request: FastifyRequest, store: Store): Promise<Place> => keptIn(request, 'place', store.place);

const serializePlace = ({ revision: _, fieldsRevision, id, ...fields }: Place): PlaceWire => ({
  id,
  revision: fieldsRevision,
  ...fields,
});

/** A refusal because a part of a place is not stored yet. */
export const nothingYet = (id: string, what: string): RequestError =>
  new RequestError('not-found', keptRefusal('not-found.of-place', { what, place: id }));
