import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { dateAt, zoneNamed } from '../../../basics/calendar.js';
import { notUnderstood, RequestError } from '../../../basics/errors.js';
import { fieldFact } from '../../../basics/field-facts.js';
import {
  placeAnswerSchema,
  placeKeptSchema,
  placeListSchema,
  placePatchSchema,
  placePutSchema,
} from '../../../contract/places.js';
import { keptRefusal } from '../../../contract/request/refusal-facts.js';
import type { Place, PlaceFields, Store } from '../../../garden/store/store.js';
import type { Localities } from '../../../localities/open-localities.js';
import { requireLocality } from '../../../localities/require-locality.js';
import type { Route } from '../../openapi/route.js';
import { keptProblems } from '../../problems/common-problems.js';
import type { Service } from '../../question/endpoint.js';
import { examplePlace } from '../../question/examples.js';
import { patchRoute, putRoute } from '../../resource/change-routes.js';
import { asKept, idIn, keptIn, queryOf, type Repository, resourceNotFound } from '../../resource/resource.js';
import { deleteAsAllowed, getRoute, listRoute } from '../../resource/resource-routes.js';
import { type AllowedSources, serializeSource, serializeSourceState } from './source-serializer.js';
import { type SourceRules, sourcesOf } from './sources-asked.js';

const deleteQuery = z.strictObject({ with: z.enum(['beds']).optional() });
const placeSchemas = { kind: 'place', put: placePutSchema, answer: placeAnswerSchema } as const;
const placeProblems = [
  'unknown-locality',
  'choose-locality',
  'unknown-preset',
  'contact-needed',
  'private-address',
] as const;

type PlacePut = z.output<typeof placePutSchema>;

/** What a service lets its places have for sources. */
export interface PlaceSources extends SourceRules {
  readonly allowed: AllowedSources;
}

/** The routes of places, each with a climate of its own. */
export const placeRoutes = ({ store, clock, localities }: Service, rules: PlaceSources): Route[] => {
  const places: Repository<Place, PlacePut> = {
    find: store.place,
    async put(owner, id, { source, sources: sentBack, ...sent }, ifRevision) {
      const fields = await lookedUp(sent, localities);
      refuseFrostDates(store, fields, clock());
      const before = (await store.place(owner, id))?.sources ?? [];
      const sources = sourcesOf(source, { isSentBack: sentBack !== undefined, before }, rules);
      return store.putPlace(owner, id, { ...fields, sources }, ifRevision);
    },
    async show(place, owner) {
      const states = place.sources.length > 0 ? await store.sourceStates(owner, place.id) : [];
      const sources = states.map((state) => serializeSourceState(state, clock().getTime(), rules.allowed));
      return asKept({ ...serializePlace(place), sources });
    },
  };
  const list = { kind: 'place', summary: 'Your places, by id', schema: placeListSchema, list: store.places } as const;
  const put = {
    ...placeSchemas,
    summary: 'Store or replace a place',
    example: examplePlace,
    problems: placeProblems,
  };
  const patch = {
    ...placeSchemas,
    summary: 'Change some fields of a place',
    patch: placePatchSchema,
    example: { annualRainMm: 800 },
    problems: placeProblems,
    onWire: serializeKeptPlace,
  };
  return [
    listRoute({ ...list, onWire: serializePlace }, clock),
    putRoute(put, places, clock),
    patchRoute(patch, places, clock),
    getRoute(
      { ...placeSchemas, put: placeKeptSchema, summary: 'One place', onWire: serializeKeptPlace },
      places,
      clock,
    ),
    deletePlace(places, store),
  ];
};

type Sent = Omit<PlacePut, 'source' | 'sources'>;

/** A place whose name, coordinates, height and zone are looked up where they were not sent. */
async function lookedUp(
  { near, ...sent }: Sent,
  localities: () => Promise<Localities>,
): Promise<Omit<PlaceFields, 'sources'>> {
  const { name, latitude, longitude, timeZone } = sent;
  const isWhole = latitude !== undefined && longitude !== undefined;
  if (near === undefined) refuseMissing({ name, latitude, longitude });
  if (isWhole && name !== undefined && timeZone !== undefined) return { ...sent, name, latitude, longitude, timeZone };
  const { index, zoneAt } = await localities();
  const town = near === undefined ? null : requireLocality(index, near, { path: ['near'] }).locality;
  const at = isWhole ? { latitude, longitude } : { latitude: town!.latitude, longitude: town!.longitude };
  return {
    ...sent,
    ...at,
    name: name ?? town!.name,
    elevationM: sent.elevationM ?? (isWhole ? null : town!.elevationM),
    timeZone: timeZone ?? (isWhole ? zoneAt(latitude, longitude) : town!.timeZone),
  };
}

/** Refuses a frost date that cannot be true of the place, as far as the climate table tells. */
function refuseFrostDates({ climateOf }: Store, fields: Omit<PlaceFields, 'sources'>, now: Date): void {
  const { latitude, longitude, elevationM, timeZone, lastFrostAround, firstFrostAround } = fields;
  if (!climateOf || (lastFrostAround === null && firstFrostAround === null)) return;
  const zone = zoneNamed(timeZone);
  try {
    climateOf(
      { latitude, longitude, elevationM, zone, lastFrostAround, firstFrostAround },
      dateAt(now.getTime(), zone),
    );
  } catch (error) {
    // Far from any station nothing is known of frost.
    if (error instanceof RequestError && error.code === 'no-climate-near') return;
    if (!(error instanceof RequestError)) throw error;
    const faults = error.faults.map(({ path = [], ...fault }) => ({ ...fault, path: path.slice(-1) }));
    throw new RequestError(error.code, error.sentences, faults);
  }
}

/** Refuses a place without a town that lacks some of these. */
function refuseMissing(fields: Readonly<Record<string, unknown>>): void {
  const missing = Object.keys(fields).filter((name) => fields[name] === undefined);
  if (missing.length === 0) return;
  throw notUnderstood(missing.map((name) => ({ path: [name], detail: fieldFact('field.missing-or-near') })));
}

const deletePlace = (places: Repository<Place, PlacePut>, store: Store): Route => ({
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

/** A place with the first of its sources, as it was when there was but one. */
const serializePlace = ({ revision: _, fieldsRevision, id, sources, ...fields }: Place) => ({
  id,
  revision: fieldsRevision,
  ...fields,
  source: sources[0] ? serializeSource(sources[0]) : null,
});

/** A place as a PUT takes it, with all of its sources. */
function serializeKeptPlace(place: Place) {
  const { sources } = place;
  return { ...serializePlace(place), ...(sources.length > 1 && { source: sources.map(serializeSource) }) };
}

/** A refusal because a part of a place is not stored yet. */
export const nothingYet = (id: string, what: string): RequestError =>
  new RequestError('not-found', keptRefusal('not-found.of-place', { what, place: id }));
