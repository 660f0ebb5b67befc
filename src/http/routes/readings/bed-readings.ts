import type { FastifyRequest } from 'fastify';
import { type Zone, zoneNamed } from '../../../basics/calendar.js';
import { RequestError } from '../../../basics/errors.js';
import { fieldFact } from '../../../basics/field-facts.js';
import { readingsKeptSchema, thermometersAnswerSchema } from '../../../contract/beds.js';
import { changesAnswerSchema, deletedAnswerSchema } from '../../../contract/kept.js';
import { keptRefusal } from '../../../contract/request/refusal-facts.js';
import { seriesSchema } from '../../../contract/series.js';
import type { Bed, Store } from '../../../garden/store/store.js';
import { ownerOf } from '../../auth/owner.js';
import { sendWithETag } from '../../negotiation/etag.js';
import { signed } from '../../openapi/model.js';
import type { Route } from '../../openapi/route.js';
import { bodyProblems, keptProblems, storageProblems } from '../../problems/common-problems.js';
import { exampleBedReadings, exampleCsv } from '../../question/examples.js';
import { kept, seriesFault, uploadOf, uploadParameters } from '../../question/upload.js';
import {
  type Current,
  changeAsAllowed,
  queryOf,
  refuseQuery,
  resourceNotFound,
  sendAsKept,
} from '../../resource/resource.js';
import { bedIn } from '../beds/beds.js';
import { instantsOf, readingsPage } from './readings-page.js';
import {
  deleteParameters,
  deleteQuery,
  isWanted,
  type ReadingsAsked,
  readingsParameters,
  readingsQuery,
} from './readings-query.js';

/** The routes of a bed's readings. */
export const bedReadingsRoutes = (store: Store, clock: () => Date): Route[] => [
  addReadings(store, clock),
  listThermometers(store, clock),
  getReadings(store, clock),
  deleteReadings(store, clock),
];

const addReadings = (store: Store, clock: () => Date): Route => ({
  method: 'POST',
  url: '/v1/beds/:id/readings',
  operation: {
    id: 'addReadings',
    summary: 'Store readings of a thermometer in or above a bed',
    description:
      'Each replaces an earlier reading of the same medium, depth and instant. Readings have instants: send days of air to the place, and days of soil with each question.',
    query: uploadParameters,
    json: { schema: seriesSchema, example: exampleBedReadings },
    csv: { example: exampleCsv },
    answer: { schema: changesAnswerSchema },
    ifMatch: true,
    problems: ['not-found', 'precondition-failed', 'quota-full', ...bodyProblems, ...storageProblems],
  },
  async handler(request) {
    const bed = await bedIn(request, store);
    const zone = await zoneOf(bed, request, store);
    const upload = await uploadOf(request, zone);
    const { readings, medium, probeDepthCm, origin } = upload.series;
    if (!readings) throw seriesFault(request, 'daily', fieldFact('field.came-by-the-day'));
    if (origin === 'forecast') {
      throw seriesFault(request, 'origin', fieldFact('field.bed-forecast'));
    }
    const owner = ownerOf(request);
    const probe = { medium, probeDepthCm };
    const changes = await changeAsAllowed(
      request,
      async () => currentOf(await store.bed(owner, bed.id), {}),
      (ifRevision) => store.putReadings(owner, bed.id, probe, readings, ifRevision),
    );
    if (!changes) throw resourceNotFound('bed', bed.id);
    return kept(upload, changes, clock());
  },
});

const listThermometers = (store: Store, clock: () => Date): Route => ({
  method: 'GET',
  url: '/v1/beds/:id/thermometers',
  operation: {
    id: 'listThermometers',
    summary: 'The thermometers of a bed: number, first and last of their readings',
    answer: { schema: thermometersAnswerSchema },
    problems: ['not-found', ...keptProblems],
  },
  async handler(request, reply) {
    refuseQuery(request);
    const bed = await bedIn(request, store);
    const kept = await store.series(ownerOf(request), bed.id);
    const thermometers = kept.map(({ probeDepthCm, ...one }) => ({
      ...one,
      ...(probeDepthCm === null ? {} : { probeDepthCm }),
    }));
    return sendWithETag(request, reply, { thermometers }, () => signed({ thermometers }, clock()));
  },
});

const getReadings = (store: Store, clock: () => Date): Route => ({
  method: 'GET',
  url: '/v1/beds/:id/readings',
  operation: {
    id: 'getReadings',
    summary: 'The readings of a bed, one series for each thermometer, which can be sent back',
    query: readingsParameters,
    answer: { schema: readingsKeptSchema },
    problems: ['not-found', ...keptProblems],
  },
  async handler(request, reply) {
    const { as, ...asked } = queryOf(readingsQuery, request);
    const bed = await bedIn(request, store);
    const owner = ownerOf(request);
    const page = async () =>
      readingsPage({ store, owner, bed, zone: await zoneOf(bed, request, store) }, asked, as === 'kept');
    if (as === 'kept') {
      const [series] = (await page()).series;
      if (!series) throw new RequestError('not-found', keptRefusal('not-found.readings', { bed: bed.id }));
      return sendAsKept(request, reply, bed.revision, series);
    }
    return sendWithETag(request, reply, readingsInputs(bed, asked), async () => signed(await page(), clock()));
  },
});

const deleteReadings = (store: Store, clock: () => Date): Route => ({
  method: 'DELETE',
  url: '/v1/beds/:id/readings',
  operation: {
    id: 'deleteReadings',
    summary: 'Delete readings of one thermometer or all, between dates or all',
    query: deleteParameters,
    answer: { schema: deletedAnswerSchema },
    ifMatch: true,
    problems: ['not-found', 'precondition-failed', ...keptProblems],
  },
  async handler(request) {
    const { from, to, ...wanted } = queryOf(deleteQuery, request);
    const bed = await bedIn(request, store);
    const range = instantsOf({ from, to }, await zoneOf(bed, request, store));
    const owner = ownerOf(request);
    const probes = (await store.series(owner, bed.id)).filter((probe) => isWanted(probe, wanted));
    const deleted = await changeAsAllowed(
      request,
      async () => currentOf(await store.bed(owner, bed.id), { from, to, ...wanted }),
      (ifRevision) => store.deleteReadings(owner, bed.id, range, probes, ifRevision),
    );
    if (deleted === undefined) throw resourceNotFound('bed', bed.id);
    return signed({ deleted }, clock());
  },
});

/** Everything that an answer about a bed's readings depends on; none need be read to know it unchanged. */
const readingsInputs = ({ id, revision }: Bed, asked: ReadingsAsked) => {
  const { from, to, medium, probeDepthCm, after, limit, precision } = asked;
  return { readings: [id, revision], asked: { from, to, medium, probeDepthCm, after, limit, precision } };
};

const currentOf = (bed: Bed | undefined, asked: Partial<ReadingsAsked>): Current =>
  bed
    ? { revision: bed.revision, inputs: () => readingsInputs(bed, { ...readingsQuery.parse({}), ...asked }) }
    : { revision: null };

/** The time zone of a bed's place. */
async function zoneOf(bed: Bed, request: FastifyRequest, store: Store): Promise<Zone> {
  const place = await store.place(ownerOf(request), bed.place);
  if (!place) throw resourceNotFound('bed', bed.id);
  return zoneNamed(place.timeZone);
}
